import { expect, test } from 'vitest';
import { isDay, readDay, today, typedDay } from '#core/words/read-day.ts';
import { LANGUAGES } from '#core/words/languages.ts';

test.each([
  ['2027-05-03', '2027-05-03'],
  ['2027-5-3', '2027-05-03'],
  [' 5/3/2027 ', '2027-05-03'],
  ['05/03/27', '2027-05-03'],
  ['12/31/2026', '2026-12-31'],
  ['2/29/2028', '2028-02-29'],
])('%s is read as %s', (typed, date) => {
  expect(readDay(typed, 'en')).toBe(date);
});

test.each(['', 'Friday', '2027-13-01', '2/29/2027', '31/12/2026', '5/3', '5/3-2027', '2027-05-03x', '0/0/0'])(
  '%j is no date',
  (typed) => {
    expect(readDay(typed, 'en')).toBeNull();
  },
);

test('what is shown to be typed over reads back as the same day, in every language', () => {
  for (const language of LANGUAGES)
    for (const day of ['2026-12-18', '2027-01-01', '2028-02-29'])
      expect(readDay(typedDay(day, language), language)).toBe(day);
});

test('today is the day by this machine’s clock, not Greenwich’s', () => {
  expect(today(new Date(2026, 10, 29, 23, 59))).toBe('2026-11-29');
  expect(today(new Date(2026, 0, 1, 0, 1))).toBe('2026-01-01');
  expect(isDay('2026-02-30')).toBe(false);
});
