import fc from 'fast-check';
import { expect, test } from 'vitest';
import { length, sum } from '#core/length/length.ts';
import { parseLength } from '#core/length/parse-length.ts';
import { isPrintedLength, printLength } from '#core/length/print-length.ts';
import { plainSpaces } from '#core/length/unbroken.ts';
import { showDecimal, shownText, showOther, showValue } from '#core/length/reading.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { randomDoor } from '../../assembly/random-door.ts';
import { plus, printed, ratio } from '../exact.ts';

const fraction = fc
  .record({ n: fc.bigInt(0n, 99_999_999n), d: fc.bigInt(1n, 99_999n) })
  .filter(({ n, d }) => n / d < 12_000n);
const denominators = [16, 32, 64] as const;

test('a length printed and read again is the same length, whatever its denominator', () => {
  fc.assert(
    fc.property(fraction, fc.constantFrom('in', 'mm'), ({ n, d }, units) => {
      const text = printLength(length(n, d));
      expect(isPrintedLength(text)).toBe(true);
      expect(text).toBe(printed({ n, d }));
      const read = parseLength(text, units);
      expect(read.ok && printLength(read.value)).toBe(text);
    }),
  );
});

test('a sum of lengths is the exact sum', () => {
  fc.assert(
    fc.property(fraction, fraction, (a, b) => {
      expect(printLength(sum(length(a.n, a.d), length(b.n, b.d)))).toBe(printed(plus(a, b)));
    }),
  );
});

test('what is shown without the sign for "about" is the value itself; with it, it is off by half a step at most', () => {
  fc.assert(
    fc.property(fraction, fc.constantFrom(...denominators), ({ n, d }, denominator) => {
      const text = printLength(length(n, d));
      const shown = showValue(text, 'in', { denominator, places: 1 });
      const back = ratio(plainSpaces(shownText({ ...shown, near: false })));
      expect(shown.near).toBe(printed(back) !== text);
      const off = back.n * d - n * back.d;
      expect((off < 0n ? -off : off) * 2n * BigInt(denominator) <= back.d * d).toBe(true);
    }),
  );
});

test('showing a plan’s values in any way changes none of them', () => {
  fc.assert(
    fc.property(randomDoor, (fields) => {
      const planned = planFile({ format: 1, job: 'x', units: 'in', doors: [fields] });
      if (!planned.ok) return;
      const before = JSON.stringify(planned.value);
      for (const { stages } of planned.value.doors[0]?.parts ?? [])
        for (const value of stages.flatMap(({ settings }) => Object.values(settings)))
          for (const denominator of denominators) {
            showValue(value, 'in', { denominator, places: 2 });
            showOther(value, 'in', { denominator, places: 1 });
            showDecimal(value);
          }
      expect(JSON.stringify(planned.value)).toBe(before);
    }),
    { numRuns: 20 },
  );
});

test('a job file of a plan’s own printed sizes gives the same plan', () => {
  fc.assert(
    fc.property(randomDoor, (fields) => {
      const plan = (door: unknown) => planFile({ format: 1, job: 'x', units: 'in', doors: [door] });
      const reprinted = JSON.parse(JSON.stringify(fields), (_name, value: unknown) =>
        typeof value === 'string' && /^[\d ]+(\/\d+)?$/.test(value) ? printed(ratio(value)) : value,
      ) as unknown;
      expect(plan(reprinted)).toEqual(plan(fields));
    }),
    { numRuns: 30 },
  );
});
