import { Mod37_36 } from '@konfirm/iso7064';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { partCode } from '#core/codes/part-code.ts';
import { readCode, readPartCode } from '#core/codes/read-code.ts';

const part = fc.record({
  job: fc.string(),
  mark: fc.string(),
  k: fc.integer({ min: 1 }),
  part: fc.string(),
  replacement: fc.nat(),
});

test('a code is nine characters without I, O, Y and Z, and a check character', () => {
  fc.assert(
    fc.property(part, (coded) => {
      const code = partCode(coded);
      expect(code).toMatch(/^[0-9A-HJ-NP-X]{9}[0-9A-Z]$/);
      expect(Mod37_36.validate(code)).toBe(true);
      expect(readPartCode(code)).toEqual({ kind: 'part', code });
    }),
  );
});

test('lower case, spaces and hyphens make no difference', () => {
  const code = partCode({ job: 'a', mark: 'B', k: 1, part: 'panel', replacement: 0 });
  const spoken = ` ${code.slice(0, 5).toLowerCase()}-${code.slice(5, 7)} ${code.slice(7)}`;
  expect(readPartCode(spoken)).toEqual({ kind: 'part', code });
});

test('any one wrong character is noticed', () => {
  const code = partCode({ job: 'a', mark: 'B', k: 1, part: 'panel', replacement: 0 });
  for (let k = 0; k < 9; k += 1)
    for (const wrong of '0123456789ABCDEFGHJKLMNPQRSTUVWX') {
      if (wrong === code[k]) continue;
      expect(readPartCode(code.slice(0, k) + wrong + code.slice(k + 1)).kind).toBe('bad-check');
    }
});

test('badges, door lines and other texts are told apart', () => {
  const code = partCode({ job: 'a', mark: 'B', k: 1, part: 'door', replacement: 0 });
  expect(readCode('P-ada')).toEqual({ kind: 'badge', badge: 'P-ADA' });
  expect(readCode(`D-${code}`)).toEqual({ kind: 'door', door: `D-${code}` });
  expect(readCode('<script>')).toEqual({ kind: 'malformed' });
  expect(readCode('x'.repeat(100_000))).toEqual({ kind: 'malformed' });
});
