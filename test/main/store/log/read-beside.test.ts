import { copyFileSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import fc from 'fast-check';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { disk } from '#main/store/files/disk.ts';
import type { FilePort } from '#main/store/files/file-port.ts';
import type { Said } from '#main/store/log/beside/batch.ts';
import type { LogAsked } from '#main/store/log/beside/entry.ts';
import { Packer, standing } from '#main/store/log/beside/pack.ts';
import { type Beside, besideIn, readBeside } from '#main/store/log/beside/read-beside.ts';
import { BATCHES_AHEAD, type Measure, tellLog } from '#main/store/log/beside/tell-log.ts';
import { Unpacker } from '#main/store/log/beside/unpack.ts';
import { EventLog } from '#main/store/log/event-log.ts';
import { writeLine } from '#main/store/log/log-line.ts';
import {
  type LogFile,
  LOG_START,
  type LogReader,
  type ScannedLog,
  scanLog,
} from '#main/store/log/read-log.ts';
import { samples } from '../../../samples.ts';
import { builtThread } from '../../work/built-worker.ts';
import { freshFolder } from '../fresh-folder.ts';

let built: Awaited<ReturnType<typeof builtThread>>;
beforeAll(async () => {
  built = await builtThread('main/store/log/beside/entry.ts');
});
afterAll(() => rmSync(built.folder, { recursive: true, force: true }));

const name = fc.oneof(
  fc.constantFrom('', 'Ada', 'Zoë', '木工', '🪚', 'a"b', 'back\\slash', 'tab\t', '\u2028', '\ud800', 'B-1'),
  fc.string({ unit: 'binary', maxLength: 20 }),
);
const instant = fc
  .date({ min: new Date('2020-01-01'), max: new Date('2030-01-01'), noInvalidDate: true })
  .map((each) => each.toISOString());
const mark = fc.record(
  {
    id: fc.oneof(fc.uuid(), name),
    code: name,
    station: fc.constantFrom('milling', 'bench'),
    stage: fc.constantFrom('mill', 'pare'),
    mark: fc.constantFrom('done', 'undo', 'spoiled', 'proved'),
    by: name,
    reason: name,
    at: fc.oneof(instant, name, fc.constant('2026-11-25T09:00:00.000+01:00')),
  },
  { requiredKeys: ['id', 'code', 'station', 'stage', 'mark', 'at'] },
);
const accepted = {
  received: fc.oneof(instant, name),
  job: name,
  door: name,
  part: name,
  mark,
};
const entry = fc.oneof(
  { weight: 4, arbitrary: fc.record(accepted).map((each) => ({ kind: 'mark', mark: each })) },
  fc
    .record({ ...accepted, replacement: fc.record({ code: name, number: fc.nat() }) })
    .map((each) => ({ kind: 'mark', mark: each })),
  fc.record({ kind: fc.constant('print'), print: fc.record({ job: name, codes: fc.array(name) }) }),
  fc.constant({ kind: 'format', format: 2, version: '0.5.0', at: '2026-11-25T08:00:00.000Z' }),
  fc.dictionary(name, fc.jsonValue()),
);
/** What a line of a log can come to: as it was written; its end or a sign in it damaged; cut; empty; its number written again. */
const harm = fc.oneof(
  { weight: 6, arbitrary: fc.constant('none') },
  fc.constantFrom('end', 'sign', 'cut', 'empty', 'again', 'noise'),
);

/** A log of these entries, as harmed. */
function logOf(lines: readonly { readonly entry: unknown; readonly harm: string }[]): Buffer {
  return Buffer.concat(
    lines.map(({ entry: each, harm: how }, k) => {
      const line = Buffer.from(writeLine(k + 1, each));
      if (how === 'end') line[line.length - 1] = 0;
      if (how === 'sign') line[line.length >> 1] = (line[line.length >> 1] ?? 0) ^ 1;
      if (how === 'cut') return line.subarray(0, line.length - 9);
      if (how === 'empty') return Buffer.from('\n');
      if (how === 'again') return Buffer.concat([line, line]);
      if (how === 'noise') return Buffer.concat([Buffer.from('# '), line]);
      return line;
    }),
  );
}

interface Read {
  readonly scanned: ScannedLog;
  /** Of every entry its number, itself as text, and where its line begins. */
  readonly read: readonly string[];
}

async function readAs(reader: LogReader, port: FilePort, path = 'log.jsonl'): Promise<Read> {
  const read: string[] = [];
  const scanned = await reader(port, path, LOG_START, ({ seq, entry: each }, byte) => {
    read.push(`${seq} ${JSON.stringify(each)} ${byte}`);
  });
  return { scanned, read };
}

/** The same entries with their fields in the same order, at the same places, and the same of the whole. */
function expectSame(other: Read, one: Read): void {
  const differs = one.read.findIndex((each, k) => other.read[k] !== each);
  expect(other.read[differs]).toBe(one.read[differs]);
  expect(other.read.length).toBe(one.read.length);
  expect(other.scanned).toEqual(one.scanned);
}

/** A log in memory. */
const inMemory = (bytes: Buffer): FilePort => ({
  ...disk,
  size: () => Promise.resolve(bytes.length),
  slice: (_path, from, to) => Promise.resolve(Buffer.from(bytes.subarray(from, to))),
});

/** Another thread's part done in this one: a batch for each few entries, each cloned as between threads. */
function besideHere(file: LogFile, measure: Measure, failsAfter = Number.POSITIVE_INFINITY) {
  let handed = 0;
  const open = ({ path, from }: LogAsked): Beside => {
    const said: Said[] = [];
    const all = tellLog(
      file,
      path,
      from,
      {
        say: (each, memory) => void said.push(structuredClone(each, { transfer: memory })),
        room: () => undefined,
      },
      measure,
    );
    return {
      async next() {
        await all;
        const next = said.shift();
        if (next === undefined || handed >= failsAfter) throw new Error('it broke');
        handed += 1;
        return next;
      },
      more: () => undefined,
      end: () => all,
    };
  };
  return { open, handed: () => handed };
}

const measure = fc.record({
  entries: fc.integer({ min: 1, max: 6 }),
  bytes: fc.integer({ min: 1, max: 2000 }),
  piece: fc.integer({ min: 150, max: 1500 }),
  texts: fc.constantFrom(0, 3, 1000),
});
const lines = fc.array(fc.record({ entry, harm }), { maxLength: 20, size: 'max' });

const heard: string[] = [];
const hear = (trouble: string) => void heard.push(trouble);
beforeEach(() => heard.splice(0));

test('whatever stands in a log, and however it is damaged, another thread finds the same in it', async () => {
  let batches = 0;
  let damaged = 0;
  await fc.assert(
    fc.asyncProperty(lines, measure, fc.nat(40), async (given, measured, cut) => {
      const whole = logOf(given);
      const port = inMemory(whole.subarray(0, Math.max(0, whole.length - cut)));
      const one = await readAs(scanLog, port);
      const beside = besideHere(port, measured);
      expectSame(await readAs(readBeside(beside.open, hear, 0), port), one);
      batches += beside.handed();
      damaged += one.scanned.damaged.length;
    }),
    { numRuns: samples(200, 5000) },
  );
  expect(heard).toEqual([]);
  expect(batches).toBeGreaterThan(500);
  expect(damaged).toBeGreaterThan(100);
});

test('where the other thread fails after any batch, all the rest is read here, and nothing twice', async () => {
  await fc.assert(
    fc.asyncProperty(lines, measure, fc.nat(4), fc.nat(40), async (given, measured, after, cut) => {
      const whole = logOf(given);
      const port = inMemory(whole.subarray(0, Math.max(0, whole.length - cut)));
      heard.splice(0);
      const beside = besideHere(port, measured, after);
      const read = await readAs(readBeside(beside.open, hear, 0), port);
      expectSame(read, await readAs(scanLog, port));
      if (after === 0) expect(heard).toEqual(['the log is read on in one thread: it broke']);
    }),
    { numRuns: samples(200, 5000) },
  );
});

test('a mark goes from thread to thread as numbers, and what is no usual mark as its JSON', () => {
  const packer = new Packer(100);
  const usual = {
    kind: 'mark',
    mark: {
      received: '2026-11-25T08:00:00.040Z',
      job: 'bench',
      door: 'B-1',
      part: 'stile-left',
      mark: {
        id: '9e3779b1-0000-4000-8000-000000000000',
        code: 'AP59V7LCJ1',
        station: 'milling',
        stage: 'mill',
        mark: 'done',
        by: 'Zoë',
        at: '2026-11-25T08:00:00.040Z',
      },
    },
  };
  const { by: _by, ...nobody } = usual.mark.mark;
  const given = [
    usual,
    { ...usual, mark: { ...usual.mark, mark: nobody } },
    { ...usual, mark: { ...usual.mark, mark: { ...usual.mark.mark, reason: 'split' } } },
    { kind: 'restored', from: 'a', at: 'b' },
  ];
  for (const [k, each] of given.entries()) {
    const bytes = Buffer.from(JSON.stringify(each));
    const stands = standing(bytes, 0, bytes.length);
    if (stands === null) throw new Error('it is JSON');
    packer.add(k + 1, 100 * k, stands);
  }
  const batch = packer.take({ ...LOG_START, passed: 0, damaged: [] });
  expect(batch.texts).toEqual(['bench', 'B-1', 'stile-left', 'AP59V7LCJ1', 'milling', 'mill', 'done', 'Zoë']);
  expect(Buffer.from(batch.instants).toString()).toBe('2026-11-25T08:00:00.040Z');
  expect(Buffer.from(batch.json).toString()).toBe(
    given
      .slice(2)
      .map((each) => JSON.stringify(each))
      .join(''),
  );
  const read: unknown[] = [];
  new Unpacker().unpack(batch, ({ seq, entry: each }, place) => void read.push([seq, each, place]));
  expect(read).toEqual(given.map((each, k) => [k + 1, each, 100 * k]));
});

/** A log on the disk of many pieces, with damaged lines and without its last line’s end. */
function largeLog(entries = 12_000): string {
  const path = join(freshFolder(), 'log.jsonl');
  const given = Array.from({ length: entries }, (_, k) => ({
    harm: k % 997 === 5 ? 'sign' : k % 1501 === 7 ? 'end' : 'none',
    entry:
      k % 50 === 0
        ? { kind: 'print', print: { job: 'hall', codes: ['A'.repeat(k % 5000)] } }
        : {
            kind: 'mark',
            mark: {
              received: new Date(1_764_057_600_000 + 40 * k).toISOString(),
              job: 'hall',
              door: `A-${k % 300}`,
              part: 'stile-left',
              mark: {
                id: `${String(k).padStart(8, '0')}-0000-4000-8000-000000000000`,
                code: `C${k % 3000}`,
                station: 'milling',
                stage: 'mill',
                mark: 'done',
                by: 'Zoë',
                at: '2026-11-25T08:00:00.000Z',
              },
            },
          },
  }));
  const whole = logOf(given);
  writeFileSync(path, whole.subarray(0, whole.length - 1));
  return path;
}

test('a thread reads a large log from the disk, and its torn tail is mended as ever', async () => {
  const path = largeLog();
  const one = await readAs(scanLog, disk, path);
  expect(one.scanned.damaged.length).toBeGreaterThan(15);
  const reader = readBeside(besideIn(built.entry), hear, 0);
  expectSame(await readAs(reader, disk, path), one);
  const again = join(freshFolder(), 'log.jsonl');
  copyFileSync(path, again);
  for (const [each, at] of [
    [scanLog, path],
    [reader, again],
  ] as const) {
    const { log, scanned } = await EventLog.open(disk, at, () => undefined, undefined, each);
    await log.close();
    expect(scanned.unended).toBe(true);
  }
  expect(readFileSync(again).equals(readFileSync(path))).toBe(true);
  expect(heard).toEqual([]);
});

test('a thread that cannot be started, throws, or ends in the midst costs no entry', async () => {
  const path = largeLog(30_000);
  const one = await readAs(scanLog, disk, path);
  const throwing = join(freshFolder(), 'throwing.mjs');
  writeFileSync(throwing, 'throw new Error("it broke");');
  const silent = join(freshFolder(), 'silent.mjs');
  writeFileSync(silent, '');
  let handed = 0;
  const ended: ReturnType<typeof besideIn> = (asked) => {
    const beside = besideIn(built.entry)(asked);
    return {
      ...beside,
      async next() {
        if (handed === 2) await beside.end();
        const said = await beside.next();
        if ('batch' in said) handed += 1;
        return said;
      },
    };
  };
  for (const open of [besideIn(join(throwing, 'none.mjs')), besideIn(throwing), besideIn(silent), ended])
    expectSame(await readAs(readBeside(open, hear, 0), disk, path), one);
  expect(handed).toBeGreaterThan(1);
  expect(heard).toHaveLength(4);
  expect(heard[1]).toBe('the log is read on in one thread: it broke');
  expect(heard[3]).toBe('the log is read on in one thread: the thread has ended');
});

test('the thread reads only so far ahead', async () => {
  const beside = besideIn(built.entry)({ path: largeLog(30_000), from: LOG_START });
  for (let k = 0; k < BATCHES_AHEAD; k += 1) expect(await beside.next()).toHaveProperty('batch');
  const next = beside.next();
  expect(await Promise.race([next, pause(200, 'nothing')])).toBe('nothing');
  beside.more();
  expect(await next).toHaveProperty('batch');
  await beside.end();
});

test('what takes the entries and throws ends it all: nothing is read again', async () => {
  const path = largeLog();
  let taken = 0;
  const reading = readBeside(besideIn(built.entry), hear, 0)(disk, path, LOG_START, () => {
    taken += 1;
    if (taken === 5000) throw new Error('a newer form');
  });
  await expect(reading).rejects.toThrow('a newer form');
  expect(taken).toBe(5000);
  expect(heard).toEqual([]);
});

test('a small log, or what is left of a large one, is read without another thread', async () => {
  const path = largeLog();
  const { size } = statSync(path);
  const none = () => {
    throw new Error('no thread is wanted');
  };
  await readAs(readBeside(none, hear, size + 1), disk, path);
  expect(heard).toEqual([]);
  await readAs(readBeside(none, hear, size), disk, path);
  expect(heard).toEqual(['the log is read on in one thread: no thread is wanted']);
});
