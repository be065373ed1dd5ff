import { expect, test } from 'vitest';
import { endOfWeek, monthOf, movedBy, movedByMonths } from '#core/words/calendar.ts';
import { LANGUAGES, tableOf } from '#core/words/languages.ts';

test('a month in English begins its weeks on Sunday and has each of its days once, in order', () => {
  const { name, weekdays, weeks } = monthOf('2026-12-18', 'en');
  expect(name).toBe('December 2026');
  expect(weekdays[0]).toEqual({ short: 'Sun', long: 'Sunday' });
  expect(weeks[0]).toEqual([
    null,
    null,
    '2026-12-01',
    '2026-12-02',
    '2026-12-03',
    '2026-12-04',
    '2026-12-05',
  ]);
  expect(weeks.flat().filter((day) => day !== null)).toEqual(
    Array.from({ length: 31 }, (_, k) => `2026-12-${String(k + 1).padStart(2, '0')}`),
  );
});

/** One language for each day that weeks begin on. */
const WEEKS = LANGUAGES.filter((language, k) => {
  const { firstDay } = tableOf(language);
  return LANGUAGES.findIndex((each) => tableOf(each).firstDay === firstDay) === k;
});

test('every day of six years stands below its own weekday, whatever day weeks begin on, February 29 too', () => {
  for (const language of WEEKS)
    for (let year = 2024; year < 2030; year += 1)
      for (let month = 1; month <= 12; month += 1) {
        const { weeks } = monthOf(`${year}-${String(month).padStart(2, '0')}-01`, language);
        expect(weeks.length).toBeLessThanOrEqual(6);
        for (const week of weeks)
          for (const [k, day] of week.entries())
            if (day !== null)
              expect(new Date(`${day}T00:00:00Z`).getUTCDay()).toBe((k + tableOf(language).firstDay) % 7);
        expect(weeks.flat().filter((day) => day !== null)).toHaveLength(
          new Date(Date.UTC(year, month, 0)).getUTCDate(),
        );
      }
});

test('a day moves over ends of months and years, and a month later keeps to the month', () => {
  expect(movedBy('2026-12-31', 1)).toBe('2027-01-01');
  expect(movedBy('2028-03-01', -1)).toBe('2028-02-29');
  expect(movedByMonths('2027-01-31', 1)).toBe('2027-02-28');
  expect(movedByMonths('2027-01-15', -1)).toBe('2026-12-15');
  expect(endOfWeek('2026-12-18', 'first', 'en')).toBe('2026-12-13');
  expect(endOfWeek('2026-12-18', 'last', 'en')).toBe('2026-12-19');
});
