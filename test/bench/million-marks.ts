import { closeSync, openSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import type { AcceptedMark } from '#core/marks/mark.ts';
import { disk } from '#main/store/files/disk.ts';
import { LOG_FORMAT, type LogEntry } from '#main/store/log/log-entry.ts';
import { writeLine } from '#main/store/log/log-line.ts';
import { Store } from '#main/store/store.ts';

export const BENCH_JOB = {
  format: 1,
  id: 'bench',
  job: 'Bench',
  units: 'in',
  doors: [{ mark: 'B', quantity: 300, opening: { width: '16', height: '30' } }],
};

/** Puts the bench's job into a folder, and a log with so many marks as a hub would have written it: each blank milled, taken back, milled again. */
export async function folderWithMarks(folder: string, marks: number, version: string): Promise<void> {
  const store = await Store.open({ port: disk, folder, version });
  await store.jobs.add(BENCH_JOB, () => false);
  const parts = store.jobs
    .all()
    .flatMap(({ index }) => Array.from({ length: index.head.doors }, (_, at) => index.door(at)))
    .flatMap(({ door, parts: blanks }) => blanks.map(({ part, code }) => ({ door, part, code })));
  await store.close();
  const file = openSync(join(folder, 'log.jsonl'), 'w');
  const at = '2026-11-25T08:00:00.000Z';
  const first: LogEntry = { kind: 'format', format: LOG_FORMAT, version, at };
  let lines = [writeLine(1, first)];
  for (let k = 0; k < marks; k += 1) {
    const { door, part, code } = parts[k % parts.length] ?? { door: '', part: '', code: '' };
    const mark: Omit<AcceptedMark, 'seq'> = {
      received: at,
      job: 'bench',
      door,
      part,
      mark: {
        id: idOf(k),
        code,
        station: 'milling',
        stage: 'mill',
        mark: Math.floor(k / parts.length) % 2 === 0 ? 'done' : 'undo',
        by: 'Ada',
        at,
      },
    };
    lines.push(writeLine(k + 2, { kind: 'mark', mark } satisfies LogEntry));
    if (lines.length < 10_000) continue;
    writeSync(file, lines.join(''));
    lines = [];
  }
  writeSync(file, lines.join(''));
  closeSync(file);
}

function idOf(k: number): string {
  const mixed = Math.imul(k + 1, 0x9e3779b1) >>> 0;
  return `${mixed.toString(16).padStart(8, '0')}-0000-4000-8000-${k.toString(16).padStart(12, '0')}`;
}

/** The value that this share of the others does not reach. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}

export const MARKS = Number(process.env.BENCH_MARKS ?? '1000000');
