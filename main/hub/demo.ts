import { join } from 'node:path';
import { disk } from '../store/files/disk.ts';
import { replaceFile } from '../store/files/file-port.ts';
import type { Store } from '../store/store.ts';
import demoJob from '../demo/demo-job.json' with { type: 'json' };

/** Puts in the demo job on the very first start in a data folder, and never again, even when it was removed. */
export async function addDemoJob(folder: string, store: Store): Promise<void> {
  const path = join(folder, 'started.json');
  if ((await disk.read(path)) !== null) return;
  if (store.jobs.all().length === 0 && store.found.scanned.lines === 0)
    await store.jobs.add(demoJob, (id) => store.seen(id));
  await replaceFile(disk, path, `${JSON.stringify({ format: 1 })}\n`);
}
