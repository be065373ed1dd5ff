import { limitsFor } from '../length/limits.ts';
import { less, sign } from '../length/length.ts';
import { parseLength } from '../length/parse-length.ts';
import { printLength } from '../length/print-length.ts';
import type { PlanPart } from './plan.ts';
import type { Units } from '../length/units.ts';

/** The length, in these units, under which no piece is machined by hand without a carrier: 12 in or 300 mm (common practice, no source). */
export function shortLimit(units: Units): string {
  return printLength(limitsFor(units).twelveInches);
}

/** Is a part too short to be machined by hand without a carrier? By its length with the grain, as the plan's warning has it. */
export function isShortPart({ length }: Pick<PlanPart, 'length'>, units: Units): boolean {
  const read = parseLength(length, units);
  return read.ok && sign(less(read.value, limitsFor(units).twelveInches)) < 0;
}
