import { type Length, length, smaller } from '../length/length.ts';
import { parseLength } from '../length/parse-length.ts';
import type { Measure, Rounding } from '../length/reading.ts';
import type { Units } from '../length/units.ts';

/** The steps that the command line takes, the coarsest first, as they are typed. */
export const STEPS: Readonly<Record<Units, readonly [string, ...string[]]>> = {
  in: ['1/16', '1/32', '1/64'],
  mm: ['0.5', '0.1'],
};

/** Cards and stickers: 1/64 in or 0.1 mm, which is as coarse as a fence or a height may be set. Common practice, no source. */
export const FINE_STEP: Readonly<Record<Units, Length>> = { in: length(1, 64), mm: length(1, 10) };

/** Decimal inches are set to a thousandth. */
const THOUSANDTH = length(1, 1000);
const HALF_MILLIMETRE = length(1, 2);

/** To what a machine is set: most numbers to multiples of `usual`, fences, heights, tongue and raise depth of `fine`. In the job's units. */
export interface Step {
  readonly units: Units;
  readonly usual: Length;
  readonly fine: Length;
}

/** A step in these units, however fine; fences and heights are never coarser than 1/64 in or 0.1 mm. */
export function stepOf(units: Units, usual: Length): Step {
  return { units, usual, fine: smaller(usual, FINE_STEP[units]) };
}

/** One of the steps of these units as it is typed; null for any other text. */
export function readStep(text: string, units: Units): Step | null {
  const read = STEPS[units].includes(text) ? parseLength(text, units) : null;
  return read?.ok === true ? stepOf(units, read.value) : null;
}

/** The step of cards and stickers. */
export function paperStep(units: Units): Step {
  return stepOf(units, FINE_STEP[units]);
}

/** The step of a screen, which is read in a measure and rounded as the shop says. */
export function screenStep(measure: Measure, { denominator, places, half }: Rounding): Step {
  if (measure === 'decimals') return stepOf('in', THOUSANDTH);
  if (measure === 'fractions') return stepOf('in', length(1, denominator));
  return stepOf('mm', half === true ? HALF_MILLIMETRE : length(1, 10 ** places));
}
