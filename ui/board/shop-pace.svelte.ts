import { untrack } from 'svelte';
import { type Forecast, forecasts } from '#core/pace/forecast.ts';
import { type Pace, paceOf } from '#core/pace/pace.ts';
import { stepsOf } from '#core/pace/steps.ts';
import { live } from '../hub/live.svelte.ts';

const AGAIN_MS = 10_000;

/** The shop's pace and what it means for each job, looked at again every ten seconds and when a job comes or goes. */
export class ShopPace {
  #tick = $state(0);
  /** Which jobs there are; a mark changes nothing of it. */
  readonly #jobs = $derived([...live.jobs.values()].map(({ line }) => `${line.id} ${line.revision}`).join());
  readonly #told = $derived.by(() => {
    void this.#tick;
    void this.#jobs;
    return untrack(() => reckoned(Date.now()));
  });

  /** Looks again from time to time; returns what ends it. */
  start(): () => void {
    const clock = setInterval(() => (this.#tick += 1), AGAIN_MS);
    return () => clearInterval(clock);
  }

  get pace(): Pace | null {
    return this.#told.pace;
  }

  forecast(job: string): Forecast | undefined {
    return this.#told.jobs.get(job);
  }
}

function reckoned(now: number): { pace: Pace | null; jobs: ReadonlyMap<string, Forecast> } {
  const times: number[] = [];
  const loads = [...live.jobs.values()].map(({ plan, progress, line }) => {
    const steps = stepsOf(plan, progress);
    for (const time of steps.times) times.push(time);
    return { job: line.id, due: line.due, left: steps.left };
  });
  const pace = paceOf(times, now, localDay);
  return { pace, jobs: pace === null ? new Map<string, Forecast>() : forecasts(loads, pace, localDay(now)) };
}

/** The day by this screen's own clock. */
function localDay(instant: number): number {
  return Math.floor((instant - new Date(instant).getTimezoneOffset() * 60_000) / 86_400_000);
}
