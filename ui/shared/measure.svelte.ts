import { type Measure, MEASURES } from '#core/length/reading.ts';
import type { Units } from '#core/length/units.ts';
import { screenMemory } from '../screen-memory.ts';

const REMEMBERED = 'shoulderline.measure.';

/** In which measure this screen shows values: chosen here for jobs in inches and for jobs in millimetres, and kept. */
class ShownMeasure {
  #chosen = $state<Readonly<Record<Units, Measure>>>({ in: remembered('in'), mm: remembered('mm') });

  /** The measure for a job in these units. */
  of(units: Units): Measure {
    return this.#chosen[units];
  }

  /** Goes on to the next one, after the last to the job's own. */
  next(units: Units): void {
    const all = MEASURES[units];
    const chosen = all[(all.indexOf(this.of(units)) + 1) % all.length] ?? all[0];
    this.#chosen = { ...this.#chosen, [units]: chosen };
    screenMemory.setItem(REMEMBERED + units, chosen);
  }
}

function remembered(units: Units): Measure {
  const kept = screenMemory.getItem(REMEMBERED + units);
  return MEASURES[units].find((each) => each === kept) ?? MEASURES[units][0];
}

export const measure = new ShownMeasure();
