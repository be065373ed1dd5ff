import { describe, expect, it } from 'vitest';
import demoJob from '#main/demo/demo-job.json' with { type: 'json' };
import { indexParts, locate } from '#core/marks/live-plan.ts';
import type { AcceptedMark, JobProgress } from '#core/marks/mark.ts';
import { emptyProgress, foldMarks } from '#core/marks/progress.ts';
import { missingBefore, nextStage } from '#core/marks/stage-state.ts';
import { forecasts } from '#core/pace/forecast.ts';
import { paceOf } from '#core/pace/pace.ts';
import { stepsOf } from '#core/pace/steps.ts';
import { dateOfDay, dayOfDate, weekday } from '#core/pace/work-days.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';

const HOUR = 3_600_000;
/** A shop five hours west of Greenwich. */
const dayOf = (instant: number) => Math.floor((instant - 5 * HOUR) / (24 * HOUR));
const at = (date: string, hour: number) => dayOfDate(date) * 24 * HOUR + (hour + 5) * HOUR;

function plan(): Plan {
  const made = planFile({
    ...demoJob,
    ways: { strip: 'rip' },
    doors: demoJob.doors.map((door) => ({ ...door, quantity: 6 })),
  });
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
}

/** Numbers from 0 to 1 that come out the same every time (the multiplier is Park and Miller's, from memory). */
function dice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/**
 * A log as a shop would leave it: from Monday 2 March on, Monday to Friday from 7:30 to 16:00 with half an hour's lunch,
 * about `perDay` steps on a day (a tenth more or less), unevenly spread, each a part's next stage.
 */
function recorded(job: Plan, perDay: number, seed: number): AcceptedMark[] {
  const roll = dice(seed);
  const index = indexParts(job);
  const codes = [...index.parts.keys()];
  const log: AcceptedMark[] = [];
  let progress: JobProgress = emptyProgress(job.id);
  for (let day = dayOfDate('2026-03-02'); codes.length > 0; day += 1) {
    if (weekday(day) === 0 || weekday(day) === 6) continue;
    const count = Math.round(perDay * (0.9 + 0.2 * roll()));
    const times = Array.from({ length: count }, () => roll() * 8)
      .map((hour) => at(dateOfDay(day), 7.5 + hour + (hour > 4.5 ? 0.5 : 0)))
      .sort((a, b) => a - b);
    for (const time of times) {
      const accepted = step(time);
      if (accepted === null) return log;
      log.push(accepted);
      progress = foldMarks(progress, [accepted]);
    }
  }
  return log;

  function step(time: number): AcceptedMark | null {
    for (let k = 0; codes.length > 0; k += 1) {
      const code = codes[(k + Math.floor(roll() * 12)) % codes.length] ?? '';
      const found = locate(index, progress, code);
      if (found === null) throw new Error(code);
      const next = nextStage(found.part, found.door, progress);
      if (next === null) codes.splice(codes.indexOf(code), 1);
      else if (missingBefore(next, found.part, found.door, progress).length === 0) {
        const received = new Date(time).toISOString();
        return {
          seq: log.length + 1,
          received,
          job: job.id,
          door: found.door.door,
          part: found.part.part,
          mark: {
            id: String(log.length),
            code,
            station: next.station,
            stage: next.stage,
            mark: 'done',
            at: received,
          },
        };
      }
    }
    return null;
  }
}

describe('the present pace', () => {
  it.each([
    [48, 1],
    [90, 2],
    [160, 3],
  ])(
    'is told within a tenth from a recorded log of %i steps a day, and so is what is left',
    (perDay, seed) => {
      const job = plan();
      const log = recorded(job, perDay, seed);
      const ended = Date.parse(log.at(-1)?.received ?? '');
      const total = log.length;
      const days = [...new Set(log.map(({ received }) => dayOf(Date.parse(received))))];
      expect(stepsOf(job, foldMarks(emptyProgress(job.id), log)).left).toBe(0);
      let looked = 0;
      for (const share of [0.2, 0.4, 0.6])
        for (const hour of [6, 11, 15.5, 20]) {
          const now = at(dateOfDay(days[Math.floor(days.length * share)] ?? 0), hour);
          const so = log.filter(({ received }) => Date.parse(received) <= now);
          const { times, left } = stepsOf(job, foldMarks(emptyProgress(job.id), so));
          expect(left).toBe(total - so.length);
          const pace = paceOf(times, now, dayOf);
          expect(Math.abs((pace?.perDay ?? 0) - perDay) / perDay, `${share} ${hour}`).toBeLessThan(0.1);
          if (pace === null || hour !== 20) continue;
          const due = dateOfDay(dayOf(ended));
          const told = forecasts([{ job: job.id, due, left }], pace, dayOf(now)).get(job.id);
          const worked = days.filter((day) => day > dayOf(now)).length - 1 + dayShare(log);
          expect(Math.abs((told?.workdays ?? 0) - worked) / worked, `${share} ${hour}`).toBeLessThan(0.1);
          expect(Math.abs(told?.spare ?? 99), due).toBeLessThanOrEqual(Math.ceil(worked * 0.1) + 2);
          looked += 1;
        }
      expect(looked).toBe(3);

      /** How much of the last day it took. */
      function dayShare(all: readonly AcceptedMark[]): number {
        return all.filter(({ received }) => dayOf(Date.parse(received)) === dayOf(ended)).length / perDay;
      }
    },
  );

  it('is not told from nothing, nor from a handful of steps on the first morning', () => {
    const now = at('2026-03-02', 9);
    expect(paceOf([], now, dayOf)).toBeNull();
    expect(paceOf([now - HOUR, now - HOUR / 2], now, dayOf)).toBeNull();
  });

  it('is not told on the first day, however much was marked in it', () => {
    const now = at('2026-03-02', 9.5);
    const times = Array.from({ length: 76 }, (_, k) => now - HOUR / 3 + k * 1000);
    expect(paceOf(times, now, dayOf)).toBeNull();
    expect(paceOf(times, at('2026-03-02', 17), dayOf)).toBeNull();
  });

  it('is not told from a first day that was begun an hour before its end, but from a whole one', () => {
    const late = Array.from({ length: 20 }, (_, k) => at('2026-03-02', 15 + k / 20));
    const whole = Array.from({ length: 40 }, (_, k) => at('2026-03-03', 8 + k / 5));
    expect(paceOf(late, at('2026-03-03', 9), dayOf)).toBeNull();
    expect(paceOf([...late, ...whole], at('2026-03-04', 7), dayOf)?.perDay).toBe(40);
    expect(paceOf(whole, at('2026-03-04', 7), dayOf)?.perDay).toBe(40);
  });

  it('falls when a shop that has worked for weeks stands still for a week', () => {
    const days = ['02', '03', '04', '05', '06', '09', '10', '11', '12', '13', '16', '17', '18', '19', '20'];
    const times = days.flatMap((day) =>
      Array.from({ length: 50 }, (_, k) => at(`2026-03-${day}`, 8 + k / 10)),
    );
    expect(paceOf(times, at('2026-03-21', 8), dayOf)?.perDay).toBe(50);
    expect(paceOf(times, at('2026-03-26', 8), dayOf)?.perDay).toBe(20);
    expect(paceOf(times, at('2026-03-28', 8), dayOf)).toBeNull();
  });
});

describe('a forecast', () => {
  const pace = { perDay: 50, weekdays: new Set([1, 2, 3, 4, 5]), today: 0 };
  const friday = dayOfDate('2026-03-06');

  it('puts the earliest due first, whatever order they are listed in, and passes over the weekend', () => {
    const told = forecasts(
      [
        { job: 'later', due: '2026-03-12', left: 100 },
        { job: 'sooner', due: '2026-03-09', left: 100 },
        { job: 'some day', left: 1 },
        { job: 'over', due: '2026-03-01', left: 0 },
      ],
      pace,
      friday,
    );
    expect(told.get('sooner')).toEqual({ finished: '2026-03-09', workdays: 2, spare: 0 });
    expect(told.get('later')).toEqual({ finished: '2026-03-11', workdays: 4, spare: 1 });
    expect(told.get('some day')).toEqual({ finished: '2026-03-12', workdays: 4.02 });
    expect(told.has('over')).toBe(false);
  });

  it('counts what was done today already against today', () => {
    const told = forecasts([{ job: 'j', due: '2026-03-05', left: 60 }], { ...pace, today: 50 }, friday);
    expect(told.get('j')).toEqual({ finished: '2026-03-10', workdays: 1.2, spare: -5 });
  });
});

/** The days of a shop in New York by the calendar, whose clock springs forward on 2026-03-08 and falls back on 2026-11-01. */
const calendar = new Intl.DateTimeFormat('en-CA', { timeZone: 'America/New_York', dateStyle: 'short' });
const dayInNewYork = (instant: number) => dayOfDate(calendar.format(instant));
/** The instant of an hour of that shop's clock, by how far it is behind Greenwich then. */
const inNewYork = (date: string, hour: number) => {
  const summer = date >= '2026-03-08' && date < '2026-11-01';
  return dayOfDate(date) * 24 * HOUR + (hour + (summer ? 4 : 5)) * HOUR;
};
const worked = (dates: readonly string[], count: number) =>
  dates.flatMap((date) => Array.from({ length: count }, (_, k) => inNewYork(date, 7 + (9 * k) / count)));

describe('clocks', () => {
  it.each([
    ['springs forward', ['2026-03-04', '2026-03-05', '2026-03-06', '2026-03-09', '2026-03-10'], '2026-03-11'],
    ['falls back', ['2026-10-28', '2026-10-29', '2026-10-30', '2026-11-02', '2026-11-03'], '2026-11-04'],
  ])('pace and forecast are the same over the week in which the clock %s', (_how, dates, today) => {
    const now = inNewYork(today, 6);
    expect(dayInNewYork(now)).toBe(dayOfDate(today));
    const pace = paceOf(worked(dates, 40), now, dayInNewYork);
    expect(pace).toMatchObject({ perDay: 40, today: 0 });
    if (pace === null) return;
    const due = dateOfDay(dayOfDate(today) + 1);
    expect(forecasts([{ job: 'j', due, left: 80 }], pace, dayInNewYork(now)).get('j')).toEqual({
      finished: due,
      workdays: 2,
      spare: 0,
    });
  });

  it('a hub’s clock set back an hour changes no pace and no forecast of the day', () => {
    const before = worked(['2026-03-16', '2026-03-17', '2026-03-18'], 40);
    const morning = Array.from({ length: 10 }, (_, k) => inNewYork('2026-03-19', 8 + k / 10));
    const told = (now: number) => {
      const pace = paceOf([...before, ...morning], now, dayInNewYork);
      if (pace === null) throw new Error('there are whole days to go by');
      const load = { job: 'j', due: '2026-03-20', left: 60 };
      return [pace.perDay, pace.today, forecasts([load], pace, dayInNewYork(now)).get('j')];
    };
    const now = inNewYork('2026-03-19', 9);
    // The marks of this morning lie before now, or after it by the clock that was set back.
    expect(told(now - HOUR)).toEqual(told(now));
    expect(told(now)).toMatchObject([40, 10, { finished: '2026-03-20', spare: 0 }]);
  });

  it('set back over midnight, what was marked on the day to come counts once that day has come again', () => {
    const before = worked(['2026-03-16', '2026-03-17', '2026-03-18'], 40);
    const afterMidnight = [inNewYork('2026-03-19', 0.25)];
    const at = (now: number) => paceOf([...before, ...afterMidnight], now, dayInNewYork);
    // On the third day, by its own clock, two whole ones lie behind.
    expect(at(inNewYork('2026-03-18', 23.5))).toMatchObject({ perDay: 40, today: 40 });
    expect(at(inNewYork('2026-03-19', 0.5))).toMatchObject({ perDay: 40, today: 1 });
  });
});
