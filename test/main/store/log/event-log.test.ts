import { appendFileSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { disk } from '#main/store/files/disk.ts';
import { EventLog } from '#main/store/log/event-log.ts';
import { type FilePort, StoreTrouble } from '#main/store/files/file-port.ts';
import { type ReadLine, writeLine } from '#main/store/log/log-line.ts';
import { freshFolder } from '../fresh-folder.ts';
import { tryingPort } from '../trying-port.ts';

function append(log: EventLog, entry: unknown): Promise<number> {
  return new Promise((done, failed) => {
    const seq = log.append(entry, { onDisk: () => done(seq), refused: failed });
  });
}

async function readBack(path: string) {
  const read: ReadLine[] = [];
  const { log, scanned } = await EventLog.open(disk, path, (line) => read.push(line));
  await log.close();
  return { read, scanned, lastSeq: log.lastSeq };
}

/** Three times as many entries as are looked at, with letters of several bytes in them. */
async function written(path: string): Promise<Buffer> {
  const { log } = await EventLog.open(disk, path, () => undefined);
  for (let k = 1; k <= 9; k += 1) await append(log, { kind: 'mark', k, by: `Zoë ${k}` });
  await log.close();
  return readFileSync(path);
}

test('an entry is written, then flushed, then answered', async () => {
  const port = tryingPort();
  const { log } = await EventLog.open(port, join(freshFolder(), 'log.jsonl'), () => undefined);
  port.steps.splice(0);
  await append(log, { k: 1 }).then(() => port.steps.push('answered'));
  expect(port.steps).toEqual(['write log.jsonl', 'flush log.jsonl', 'answered']);
  await log.close();
});

test('entries that arrive together share one flush and keep their order', async () => {
  const port = tryingPort();
  const path = join(freshFolder(), 'log.jsonl');
  const { log } = await EventLog.open(port, path, () => undefined);
  port.steps.splice(0);
  const seqs = await Promise.all(Array.from({ length: 50 }, (_, k) => append(log, { k })));
  expect(seqs).toEqual(Array.from({ length: 50 }, (_, k) => k + 1));
  expect(port.steps.filter((step) => step.startsWith('flush'))).toHaveLength(1);
  await log.close();
  expect((await readBack(path)).read.map(({ entry }) => entry)).toEqual(
    Array.from({ length: 50 }, (_, k) => ({ k })),
  );
});

test.each([
  ['a full disk', 'write', 'ENOSPC'],
  ['a failing flush', 'flush', 'EIO'],
  ['a disk that can no longer be written on', 'write', 'EROFS'],
] as const)('%s refuses entries, and they are taken again when it is mended', async (_what, step, code) => {
  const port = tryingPort();
  const path = join(freshFolder(), 'log.jsonl');
  const { log } = await EventLog.open(port, path, () => undefined);
  await append(log, { k: 1 });
  port.break(step, code, /log/);
  await expect(append(log, { k: 2 })).rejects.toThrow(StoreTrouble);
  await expect(append(log, { k: 3 })).rejects.toThrow(code);
  expect(log.trouble?.message).toContain(code);
  port.mend();
  expect(await append(log, { k: 4 })).toBe(2);
  expect(log.trouble).toBeNull();
  await log.close();
  expect((await readBack(path)).read.map(({ entry }) => entry)).toEqual([{ k: 1 }, { k: 4 }]);
});

test('after a failed flush the file is opened anew, cut to what was answered, and flushed before anything is added', async () => {
  const port = tryingPort();
  const { log } = await EventLog.open(port, join(freshFolder(), 'log.jsonl'), () => undefined);
  await append(log, { k: 1 });
  port.break('flush', 'EIO');
  await expect(append(log, { k: 2 })).rejects.toThrow('EIO');
  port.mend();
  port.steps.splice(0);
  await append(log, { k: 3 });
  expect(port.steps).toEqual([
    'create log.jsonl',
    'truncate log.jsonl',
    'flush log.jsonl',
    'write log.jsonl',
    'flush log.jsonl',
  ]);
  await log.close();
});

test('of a file that fails again each time it is opened anew, one stays open', async () => {
  let open = 0;
  const counting: FilePort = {
    ...disk,
    async grow(path) {
      const file = await disk.grow(path);
      open += 1;
      return {
        ...file,
        close: () => {
          open -= 1;
          return file.close();
        },
      };
    },
  };
  const port = tryingPort(counting);
  const { log } = await EventLog.open(port, join(freshFolder(), 'log.jsonl'), () => undefined);
  port.break('flush', 'EIO');
  for (let k = 0; k < 5; k += 1) await expect(append(log, { k })).rejects.toThrow('EIO');
  expect(open).toBe(1);
  port.mend();
  expect(await append(log, { k: 5 })).toBe(1);
  expect(open).toBe(1);
  await log.close();
  expect(open).toBe(0);
});

test('another file in the log’s place is neither cut nor added to, whatever it holds', async () => {
  const path = join(freshFolder(), 'log.jsonl');
  const { log } = await EventLog.open(disk, path, () => undefined);
  await append(log, { k: 1 });
  const successors = `${readFileSync(path, 'utf8')}a line of who took the folder over\n`;
  writeFileSync(`${path}.new`, successors);
  renameSync(`${path}.new`, path);
  await expect(append(log, { k: 2 })).rejects.toThrow(/moved or removed/);
  await expect(append(log, { k: 2 })).rejects.toThrow(/another file stands in the log’s place/);
  expect(readFileSync(path, 'utf8')).toBe(successors);
  await log.close();
});

test('a line that somebody else added is noticed before anything is answered, and cut off', async () => {
  const path = join(freshFolder(), 'log.jsonl');
  const { log } = await EventLog.open(disk, path, () => undefined);
  await append(log, { k: 1 });
  appendFileSync(path, writeLine(2, { k: 'a late one' }));
  await expect(append(log, { k: 2 })).rejects.toThrow(/somebody else wrote it/);
  expect(await append(log, { k: 3 })).toBe(2);
  await log.close();
  expect((await readBack(path)).read.map(({ entry }) => entry)).toEqual([{ k: 1 }, { k: 3 }]);
});

test('a short write is gone on with until all bytes are written', async () => {
  const port = tryingPort();
  const path = join(freshFolder(), 'log.jsonl');
  const { log } = await EventLog.open(port, path, () => undefined);
  port.break('write', 'short');
  await append(log, { text: 'x'.repeat(500) });
  expect(port.steps.filter((step) => step.startsWith('write')).length).toBeGreaterThan(5);
  await log.close();
  expect((await readBack(path)).read).toHaveLength(1);
});

test('a log that was moved away is noticed before anything is answered', async () => {
  const path = join(freshFolder(), 'log.jsonl');
  const { log } = await EventLog.open(disk, path, () => undefined);
  await append(log, { k: 1 });
  renameSync(path, `${path}.moved`);
  await expect(append(log, { k: 2 })).rejects.toThrow(/moved or removed/);
  await expect(append(log, { k: 2 })).rejects.toThrow(/shorter than what was answered/);
  renameSync(`${path}.moved`, path);
  expect(await append(log, { k: 3 })).toBe(2);
  await log.close();
});

test('a log that was written over by another is not added to', async () => {
  const port = tryingPort();
  const path = join(freshFolder(), 'log.jsonl');
  const { log } = await EventLog.open(port, path, () => undefined);
  await append(log, { k: 1 });
  const size = readFileSync(path).length;
  port.break('flush', 'EIO');
  await expect(append(log, { k: 2 })).rejects.toThrow('EIO');
  port.mend();
  writeFileSync(path, 'y'.repeat(size));
  await expect(append(log, { k: 3 })).rejects.toThrow(/no longer ends as it was answered/);
  expect(readFileSync(path, 'utf8')).toBe('y'.repeat(size));
  await log.close();
});

test('cut at every byte of its last three lines, all whole lines are there and the torn one is cut off', async () => {
  const path = join(freshFolder(), 'log.jsonl');
  const whole = await written(path);
  const ends = [...whole.entries()].filter(([, byte]) => byte === 10).map(([at]) => at);
  for (let cut = (ends[5] ?? 0) + 1; cut < whole.length; cut += 1) {
    writeFileSync(path, whole.subarray(0, cut));
    const { read, scanned, lastSeq } = await readBack(path);
    const left = ends.filter((end) => end <= cut).length;
    expect(read.map(({ seq }) => seq)).toEqual(Array.from({ length: left }, (_, k) => k + 1));
    expect(lastSeq).toBe(left);
    expect(scanned.damaged).toEqual([]);
    expect(readFileSync(path).equals(whole.subarray(0, (ends[left - 1] ?? 0) + 1))).toBe(true);
  }
}, 30_000);

test.each([
  ['its inside', (eighth: string) => eighth.replace('"k":8', '"k":7'), [1, 2, 3, 4, 5, 6, 7, 9], 0],
  ['its end', (eighth: string) => `${eighth}#`, [1, 2, 3, 4, 5, 6, 7, 8, 9], 2],
  [
    'its end and its inside',
    (eighth: string) => `${eighth.replace('"k":8', '"k":7')}#`,
    [1, 2, 3, 4, 5, 6, 7, 9],
    1,
  ],
])(
  'the last line without its end is kept when the one before is damaged in %s',
  async (_what, damage, kept, saved) => {
    const path = join(freshFolder(), 'log.jsonl');
    const lines = (await written(path)).toString('utf8').split('\n');
    const eighth = damage(lines[7] ?? '');
    const joined = eighth.endsWith('#') ? eighth.slice(0, -1) + '\v' : `${eighth}\n`;
    writeFileSync(path, `${lines.slice(0, 7).join('\n')}\n${joined}${lines[8] ?? ''}`);
    for (const ended of [false, true]) {
      const { read, scanned, lastSeq } = await readBack(path);
      expect(read.map(({ seq }) => seq)).toEqual(kept);
      expect(lastSeq).toBe(9);
      expect(scanned).toMatchObject({ torn: 0, unended: !ended, damaged: [{ line: 8, saved }] });
    }
    const { log } = await EventLog.open(disk, path, () => undefined);
    expect(await append(log, { k: 10 })).toBe(10);
    const told: number[] = [];
    for await (const { seq } of log.from(0)) told.push(seq);
    expect(told).toEqual([...kept, 10]);
    expect(await log.entryAt(9)).toMatchObject({ k: 9 });
    await log.close();
  },
);

test('with bytes flipped anywhere, no other entry is lost, none is read wrong, and the place is told', async () => {
  const path = join(freshFolder(), 'log.jsonl');
  const whole = await written(path);
  const lines = whole.toString('latin1').split('\n').slice(0, -1);
  await fc.assert(
    fc.asyncProperty(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 }), async (at, flip) => {
      const damaged = Buffer.from(whole);
      damaged[at] = (damaged[at] ?? 0) ^ flip;
      writeFileSync(path, damaged);
      const { read, scanned } = await readBack(path);
      const hit = whole.subarray(0, at).toString('latin1').split('\n').length;
      for (const { seq, entry } of read) expect(entry).toEqual({ kind: 'mark', k: seq, by: `Zoë ${seq}` });
      const lost = lines.map((_, k) => k + 1).filter((k) => !read.some(({ seq }) => seq === k));
      expect(lost.filter((k) => k !== hit && k !== hit + 1)).toEqual([]);
      expect(lost.length).toBeLessThanOrEqual(1);
      if (hit < lines.length && lost.length > 0) expect(scanned.damaged[0]?.line).toBe(hit);
    }),
    { numRuns: 200 },
  );
}, 30_000);

test('no number is given out twice behind a damaged line', async () => {
  const path = join(freshFolder(), 'log.jsonl');
  const whole = await written(path);
  writeFileSync(path, whole.toString('utf8').replace('"k":9', '"k":8'));
  const { log } = await EventLog.open(disk, path, () => undefined);
  expect(await append(log, { k: 10 })).toBe(10);
  await log.close();
});

test('an entry is found by its number, and all after a number are read in order', async () => {
  const path = join(freshFolder(), 'log.jsonl');
  const { log } = await EventLog.open(disk, path, () => undefined);
  await Promise.all(Array.from({ length: 2000 }, (_, k) => append(log, { k: k + 1 })));
  expect(await log.entryAt(1)).toEqual({ k: 1 });
  expect(await log.entryAt(1999)).toEqual({ k: 1999 });
  expect(await log.entryAt(2001)).toBeNull();
  const read: number[] = [];
  for await (const { seq } of log.from(1500)) read.push(seq);
  expect(read).toEqual(Array.from({ length: 500 }, (_, k) => 1501 + k));
  await log.close();
});

test('what a stranger adds behind the last answered line does not stop the reading of what was answered', async () => {
  const path = join(freshFolder(), 'log.jsonl');
  await written(path);
  appendFileSync(path, 'not a line of the log\n');
  const { read, scanned } = await readBack(path);
  expect(read).toHaveLength(9);
  expect(scanned.damaged).toEqual([{ line: 10, byte: expect.any(Number) as number, saved: 0 }]);
});
