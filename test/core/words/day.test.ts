import { expect, test } from 'vitest';
import { shownDay, shownFullDay, shownInstant, shownSince } from '#core/words/day.ts';
import { LANGUAGES } from '#core/words/languages.ts';

test('a date is written as Americans do, its weekday before it', () => {
  expect(shownDay('2026-12-18')).toBe('Fri, Dec 18');
  expect(shownDay('2027-01-01')).toBe('Fri, Jan 1');
});

test('a date that may be in another year has its year behind it, and is read out in full', () => {
  expect(shownFullDay('2027-01-01')).toBe('Fri, Jan 1, 2027');
  expect(shownFullDay('2026-12-18', 'long')).toBe('Friday, December 18, 2026');
});

test('an instant has its month before its day and its hours by AM and PM, no line break before them', () => {
  const at = new Date(2026, 11, 18, 14, 5, 9).toISOString();
  expect(shownInstant(at)).toBe('Dec 18, 2:05\u00a0PM');
  expect(shownInstant(at, 'second')).toBe('Dec 18, 2:05:09\u00a0PM');
});

test('no language is without a way to write dates', () => {
  for (const language of LANGUAGES) expect(shownDay('2026-12-18', language)).toMatch(/18/);
});

test('an instant of today is told by its time alone, an older one with its day', () => {
  const at = new Date(2026, 11, 18, 14, 5).toISOString();
  expect(shownSince(at, new Date(2026, 11, 18, 23, 59).getTime())).toBe('2:05\u00a0PM');
  expect(shownSince(at, new Date(2026, 11, 19, 0, 0).getTime())).toBe('Dec 18, 2:05\u00a0PM');
});
