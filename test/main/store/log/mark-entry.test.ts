import fc from 'fast-check';
import { crc32 } from 'node:zlib';
import { expect, test } from 'vitest';
import { isWhole, readLine, salvage, writeLine } from '#main/store/log/log-line.ts';
import { readMarkEntry } from '#main/store/log/mark-entry.ts';
import { sumOfNumber } from '#main/store/log/number-sum.ts';
import { samples } from '../../../samples.ts';

/** Names that are plain, of several bytes a sign, or written with an escape. */
const text = fc.oneof(
  fc.constantFrom('', 'Ada', 'Zoë', '木工', 'a"b', 'back\\slash', 'tab\t', '\u007f', '\u2028', 'B-1'),
  fc.string({ unit: 'binary', maxLength: 40 }),
);
const instant = fc
  .date({ min: new Date('2020-01-01'), max: new Date('2030-01-01'), noInvalidDate: true })
  .map((each) => each.toISOString());
const mark = fc.record(
  {
    id: fc.uuid(),
    code: text,
    station: fc.constantFrom('milling', 'bench'),
    stage: fc.constantFrom('mill', 'pare'),
    mark: fc.constantFrom('done', 'undo', 'spoiled', 'proved'),
    by: text,
    reason: text,
    at: fc.oneof(instant, text),
  },
  { requiredKeys: ['id', 'code', 'station', 'stage', 'mark', 'at'] },
);
/** As the hub writes them, and with fields more, fewer, or of another kind. */
const entry = fc.oneof(
  fc
    .record({ received: instant, job: text, door: text, part: text, mark })
    .map((each) => ({ kind: 'mark', mark: each })),
  fc
    .record({
      received: text,
      job: text,
      door: text,
      part: text,
      mark,
      replacement: fc.record({ code: text, number: fc.nat() }),
    })
    .map((each) => ({ kind: 'mark', mark: each })),
  fc.dictionary(text, fc.jsonValue()),
);

const plain = {
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
      at: '2026-11-25T08:00:00.000Z',
    },
  },
};
const bytesOf = (value: unknown) => Buffer.from(JSON.stringify(value));

test('a mark as the hub writes one is read without JSON.parse, with anyone’s name and without', () => {
  const { by: _by, ...nobody } = plain.mark.mark;
  for (const each of [plain, { ...plain, mark: { ...plain.mark, mark: nobody } }]) {
    const bytes = bytesOf(each);
    expect(JSON.stringify(readMarkEntry(bytes, 0, bytes.length))).toBe(JSON.stringify(each));
  }
});

test('whatever stands in an entry, it is read as JSON.parse reads it', () => {
  let direct = 0;
  fc.assert(
    fc.property(fc.nat(), fc.array(entry, { minLength: 1, maxLength: 4 }), (seq, entries) => {
      const line = Buffer.from(entries.map((each, k) => writeLine(seq + k, each)).join(''));
      let from = 0;
      for (const [k, each] of entries.entries()) {
        const to = line.indexOf(10, from);
        const parsed = JSON.parse(JSON.stringify(each)) as unknown;
        const read = readLine(line, from, to);
        // The same fields in the same order, and the same objects.
        expect(JSON.stringify(read)).toBe(JSON.stringify({ seq: seq + k, entry: parsed }));
        expect(read?.entry).toEqual(parsed);
        const begun = line.indexOf('"entry":', from) + 8;
        if (readMarkEntry(line, begun, to - 1) !== null) direct += 1;
        from = to + 1;
      }
    }),
    { numRuns: samples(500, 20_000) },
  );
  // Some thirty at the mean: entries are drawn at random.
  expect(direct).toBeGreaterThan(5);
});

test('bytes of an entry that are others are read as JSON.parse reads them, or not at all', () => {
  const bytes = bytesOf(plain);
  const parsed = (given: Buffer): string | null => {
    try {
      return JSON.stringify(JSON.parse(given.toString('utf8')));
    } catch {
      return null;
    }
  };
  let readable = 0;
  for (let k = 0; k < bytes.length; k += 1)
    for (const byte of [0, 10, 31, 32, 34, 65, 92, 125, 127, 128, 195, 255]) {
      const other = Buffer.from(bytes);
      other[k] = byte;
      const read = readMarkEntry(other, 0, other.length);
      if (read === null) continue;
      readable += 1;
      expect(JSON.stringify(read)).toBe(parsed(other));
    }
  expect(readable).toBeGreaterThan(500);
  for (let to = 0; to < bytes.length; to += 1) expect(readMarkEntry(bytes.subarray(0, to), 0, to)).toBeNull();
});

test('a line with one byte that is another is not whole, wherever that is', () => {
  const line = Buffer.from(writeLine(4711, plain).trimEnd());
  const within = Buffer.concat([Buffer.from('before\n'), line, Buffer.from('\nbehind')]);
  for (let k = 0; k < line.length; k += 1)
    for (const byte of [0, 48, 57, 65, 102, 195]) {
      const at = 7 + k;
      const was = within[at];
      if (was === byte) continue;
      within[at] = byte;
      expect(isWhole(within, 7, 7 + line.length)).toBe(false);
      expect(readLine(within, 7, 7 + line.length)).toBeNull();
      within[at] = was ?? 0;
    }
  expect(readLine(within, 7, 7 + line.length)).toEqual({ seq: 4711, entry: plain });
  for (let to = 0; to < line.length; to += 1) expect(readLine(line, 0, to)).toBeNull();
});

test('two lines that ran together are both found', () => {
  const lines = [writeLine(8, plain), writeLine(9, plain)].map((each) => each.trimEnd());
  expect(salvage(Buffer.from(lines.join('#'))).map(({ seq, entry: read }) => [seq, read])).toEqual([
    [8, plain],
    [9, plain],
  ]);
});

test('the sum over a number’s digits is zlib’s, and zeros before a number are no part of it', () => {
  fc.assert(
    fc.property(fc.nat({ max: Number.MAX_SAFE_INTEGER }), (seq) => {
      const digits = Buffer.from(`x${seq}y`);
      expect(sumOfNumber(digits, 1, digits.length - 1)).toBe(crc32(`${seq}:`));
    }),
    { numRuns: samples(200, 10_000) },
  );
  const padded = writeLine(7, plain).replace('{"seq":7', '{"seq":007').trimEnd();
  expect(readLine(Buffer.from(padded))).toEqual({ seq: 7, entry: plain });
});
