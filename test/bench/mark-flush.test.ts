import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { disk } from '#main/store/files/disk.ts';
import { Store } from '#main/store/store.ts';
import { folderWithMarks, MARKS, percentile } from './million-marks.ts';

const ROUNDS = 3000;
/** Left out: by then everything was compiled. */
const WARM = 1000;

test.each([0, MARKS])(
  'with %i marks in the log, a mark costs at most half as much again as a bare append and flush',
  async (marks) => {
    const folder = mkdtempSync(join(tmpdir(), 'shoulderline-bench-'));
    const bare = await open(join(folder, 'bare'), 'a');
    try {
      await folderWithMarks(folder, marks, 'bench');
      const store = await Store.open({ port: disk, folder, version: 'bench' });
      const code = store.jobs.all()[0]?.index.door(7).parts[0]?.code ?? '';
      const milled = store.progress('bench').parts[code]?.done.mill !== undefined;
      const line = Buffer.from(`${'x'.repeat(330)}\n`);
      const times = { mark: [] as number[], bare: [] as number[] };
      for (let k = 0; k < ROUNDS; k += 1) {
        const began = performance.now();
        const told = await store.mark({
          id: randomUUID(),
          code,
          station: 'milling',
          stage: 'mill',
          mark: (k % 2 === 0) === milled ? 'undo' : 'done',
          at: '2026-11-25T08:00:00Z',
        });
        const between = performance.now();
        await bare.write(line);
        await bare.datasync();
        times.bare.push(performance.now() - between);
        times.mark.push(between - began);
        expect(told.ok).toBe(true);
      }
      await store.close();
      const [mark, append] = [
        percentile(times.mark.slice(WARM), 0.5),
        percentile(times.bare.slice(WARM), 0.5),
      ];
      console.log(
        `mark flush at ${marks} marks: median ${mark.toFixed(3)} ms, bare append and flush ${append.toFixed(3)} ms, ${(mark / append).toFixed(2)} times`,
      );
      expect(mark / append).toBeLessThan(1.5);
    } finally {
      await bare.close();
      rmSync(folder, { recursive: true, force: true });
    }
  },
);
