import { less, type Length, sum } from '../length/length.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import type { DoorValues, PlanDoor, PlanPart } from './plan.ts';
import { stageOf } from './stage-of.ts';
import { trimOf } from './trim-of.ts';

/** A door's size before it is trimmed, horns not counted: what is finished, and what comes off its sides. */
export function asBuilt(
  values: DoorValues,
  units: Units,
): { readonly width: Length; readonly height: Length } {
  const { left, right, bottom, top } = trimOf(values);
  const read = (value: string) => readPrinted(value, units);
  return {
    width: sum(read(values.finishedWidth), read(left), read(right)),
    height: sum(read(values.finishedHeight), read(bottom), read(top)),
  };
}

/**
 * How far a stile stands over its rails at each end. Its bottom horn is as specified; the top one is what its length leaves,
 * which is less where it came out short, and under 0 where it ends below the door's top as built.
 */
export function hornsOf(
  door: PlanDoor,
  stile: Pick<PlanPart, 'length'>,
  units: Units,
): { readonly bottom: Length; readonly top: Length } {
  const bottom = readPrinted(stageOf(door, 'trim')?.settings.horn ?? '0', units);
  const { height } = asBuilt(door.values, units);
  return { bottom, top: less(readPrinted(stile.length, units), height, bottom) };
}
