import { builtinModules } from 'node:module';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';

const root = join(import.meta.dirname, '..', '..', '..');

/** Builds a thread's file from the sources as they are, as the hub's build does; gives the folder and the file in it. */
export function builtWorker(): Promise<{ readonly folder: string; readonly entry: string }> {
  return builtThread('main/work/worker.ts');
}

/** The same of the thread whose entry this file is. */
export async function builtThread(
  source: string,
): Promise<{ readonly folder: string; readonly entry: string }> {
  const folder = mkdtempSync(join(tmpdir(), 'shoulderline-worker-'));
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: true,
      outDir: folder,
      minify: false,
      rolldownOptions: {
        input: { worker: join(root, source) },
        external: [...builtinModules, /^node:/],
        output: { entryFileNames: '[name].mjs', chunkFileNames: '[name].mjs' },
      },
    },
  });
  return { folder, entry: join(folder, 'worker.mjs') };
}
