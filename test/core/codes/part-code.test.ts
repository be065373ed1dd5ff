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

/** Every way to write a code with letters for the digits that they look like, at the check character also the other way round. */
function typedLike(code: string): string[] {
  const either: Readonly<Record<string, string>> = { '0': '0O', '1': '1I' };
  const atCheck: Readonly<Record<string, string>> = { ...either, O: 'O0', I: 'I1' };
  return [...code].reduce<string[]>(
    (begun, character, k) =>
      begun.flatMap((start) =>
        [...((k < 9 ? either : atCheck)[character] ?? character)].map((typed) => start + typed),
      ),
    [''],
  );
}

/** A body of the alphabet with many a 0 and 1 in it. */
const body = fc
  .array(fc.oneof(fc.constantFrom('0', '1'), fc.constantFrom(...'0123456789ABCDEFGHJKLMNPQRSTUVWX')), {
    minLength: 9,
    maxLength: 9,
  })
  .map((characters) => characters.join(''));

test('O typed for 0 and I for 1 are read, at the check character the other way round too, and never as another code', () => {
  fc.assert(
    fc.property(body, fc.boolean(), (nine, small) => {
      const code = nine + Mod37_36.checksum(nine);
      for (const typed of typedLike(code)) {
        const text = small ? typed.toLowerCase() : typed;
        expect(readPartCode(text), text).toEqual({ kind: 'part', code });
        expect(readCode(`D-${text}`), text).toEqual({ kind: 'door', door: `D-${code}` });
      }
    }),
  );
});

/** Nine characters, the check character that they ask for, and what may be typed for it. */
test.each([
  ['00000000M', 'O', 'O0'],
  ['00000000G', '0', '0O'],
  ['00000000P', 'I', 'I1'],
  ['00000000F', '1', '1I'],
])('of %s the check character is %s, and any of %s is read as that', (nine, check, typed) => {
  expect(Mod37_36.checksum(nine)).toBe(check);
  for (const each of typed)
    expect(readPartCode(nine.replace(/0/g, 'O') + each)).toEqual({ kind: 'part', code: nine + check });
});

test('at most one check character fits nine characters, so that no two readings can', () => {
  fc.assert(
    fc.property(body, (nine) => {
      const fitting = [...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'].filter((check) =>
        Mod37_36.validate(nine + check),
      );
      expect(fitting).toEqual([Mod37_36.checksum(nine)]);
    }),
  );
});

test('Y and Z stay refused among the nine, and are read as they are at the check character', () => {
  const nine = '803AX3UER';
  for (const letter of 'YZyz')
    for (let k = 0; k < 9; k += 1)
      expect(readPartCode(`${nine.slice(0, k)}${letter}${nine.slice(k + 1)}0`)).toEqual({
        kind: 'malformed',
      });
  // By the rule of MOD 37,36 these ask for a Y and a Z.
  expect(readPartCode('803AX3UE1Y')).toEqual({ kind: 'part', code: '803AX3UE1Y' });
  expect(readPartCode('803AX3U09Z')).toEqual({ kind: 'part', code: '803AX3U09Z' });
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
