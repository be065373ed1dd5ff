import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import pino from 'pino';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { disk } from '#main/store/files/disk.ts';
import { writeLine } from '#main/store/log/log-line.ts';
import { builtThread } from '../work/built-worker.ts';
import { liveHub } from './live-hub.ts';

let built: Awaited<ReturnType<typeof builtThread>>;
beforeAll(async () => {
  built = await builtThread('main/store/log/beside/entry.ts');
});
afterAll(() => rmSync(built.folder, { recursive: true, force: true }));

/** More marks than are read without another thread (8 MiB). */
const MARKS = 30_000;

/** A log of that many marks of a door, done and taken back by turns. */
function largeLog(): string {
  const lines = [
    writeLine(1, { kind: 'format', format: 2, version: 'test', at: '2026-11-25T08:00:00.000Z' }),
  ];
  for (let k = 0; k < MARKS; k += 1)
    lines.push(
      writeLine(k + 2, {
        kind: 'mark',
        mark: {
          received: new Date(1_764_057_600_000 + 40 * k).toISOString(),
          job: 'hall',
          door: `A-${1 + (k % 100)}`,
          part: 'stile-left',
          mark: {
            id: `${String(k).padStart(8, '0')}-0000-4000-8000-000000000000`,
            code: 'AP59V7LCJ1',
            station: 'milling',
            stage: 'mill',
            mark: k % 200 < 100 ? 'done' : 'undo',
            by: 'Zoë',
            at: '2026-11-25T08:00:00.000Z',
          },
        },
      }),
    );
  return lines.join('');
}

test('a hub reads a large log in a thread of its own, where it reads from the disk as it is', async () => {
  const live = await liveHub();
  await live.hub.stop();
  const warned: string[] = [];
  const logger = pino({ level: 'warn' }, { write: (line: string) => void warned.push(line) });
  const path = join(live.data, 'log.jsonl');
  const text = largeLog();
  const started = async (options: Parameters<typeof live.start>[0]) => {
    writeFileSync(path, text);
    rmSync(join(live.data, 'snapshot.bin'), { force: true });
    warned.splice(0);
    await live.start({ logger, ...options });
    const progress = live.hub.store.progress('hall');
    const said = warned.filter((line) => line.includes('read on in one thread')).length;
    await live.hub.stop();
    return { progress, said };
  };
  const here = await started({});
  expect(here.progress.seq).toBe(MARKS + 1);
  const beside = await started({ logReader: built.entry });
  expect(beside).toEqual(here);
  // A thread that is not there is wanted, and told of; of another file system than the disk none is.
  const none = join(built.folder, 'none.mjs');
  expect(await started({ logReader: none })).toEqual({ ...here, said: 1 });
  expect(await started({ logReader: none, files: { ...disk } })).toEqual(here);
  await live.start({ logger });
});
