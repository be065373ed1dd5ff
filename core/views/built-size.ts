import { sum } from '../length/length.ts';
import { printLength } from '../length/print-length.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import type { DoorValues } from '../plan/plan.ts';
import { trimOf } from '../plan/trim-of.ts';
import { drawn } from './drawn.ts';

/** A door's size before it is trimmed, horns not counted, to draw with: what is finished, and what comes off. */
export function drawnAsBuilt(values: DoorValues): { readonly width: number; readonly height: number } {
  const { left, right, bottom, top } = trimOf(values);
  return {
    width: drawn(values.finishedWidth) + drawn(left) + drawn(right),
    height: drawn(values.finishedHeight) + drawn(bottom) + drawn(top),
  };
}

/** The same, exact and printed. */
export function printedAsBuilt(
  values: DoorValues,
  units: Units,
): { readonly width: string; readonly height: string } {
  const { left, right, bottom, top } = trimOf(values);
  const added = (...each: readonly string[]) => {
    const [first, ...more] = each.map((value) => readPrinted(value, units));
    return first === undefined ? '0' : printLength(sum(first, ...more));
  };
  return {
    width: added(values.finishedWidth, left, right),
    height: added(values.finishedHeight, bottom, top),
  };
}
