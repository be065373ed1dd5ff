import { convertPrinted } from '../job/convert-units.ts';
import { length, over, times } from '../length/length.ts';
import { printReal, realOf } from '../length/real.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import type { PlanDoor, PlanStage, SettingValue } from '../plan/plan.ts';

const MM_IN_AN_INCH = length(127, 5);

const known: Readonly<Record<Units, WeakMap<PlanDoor, PlanDoor>>> = {
  in: new WeakMap(),
  mm: new WeakMap(),
};

/**
 * A door as a plan in other units prints it: lengths exactly, figures with six decimals to six decimals. Reasons and notes
 * stay as they are. The same object again for the same door.
 */
export function doorInUnits(door: PlanDoor, from: Units, to: Units): PlanDoor {
  if (from === to) return door;
  const before = known[to].get(door);
  if (before !== undefined) return before;
  /** A door says the same lengths again and again. */
  const said = new Map<SettingValue, SettingValue>();
  const value = (each: SettingValue): SettingValue => {
    const now = said.get(each) ?? valueInUnits(each, from, to);
    said.set(each, now);
    return now;
  };
  const stage = (each: PlanStage): PlanStage =>
    // Names and sorts of settings stay: only their figures are others.
    ({
      ...each,
      settings: converted(each.settings, value),
      ...(each.places === undefined
        ? {}
        : { places: each.places.map((place) => ({ ...place, settings: converted(place.settings, value) })) }),
    }) as PlanStage;
  const now: PlanDoor = {
    ...door,
    values: converted(door.values, value) as PlanDoor['values'],
    parts: door.parts.map((part) => ({
      ...part,
      length: String(value(part.length)),
      width: String(value(part.width)),
      thickness: String(value(part.thickness)),
      stages: part.stages.map(stage),
    })),
    stages: door.stages.map(stage),
  };
  known[to].set(door, now);
  return now;
}

/** A tree of printed values, each put through. */
function converted(tree: unknown, value: (each: SettingValue) => SettingValue): unknown {
  if (typeof tree === 'string' || typeof tree === 'number') return value(tree);
  if (Array.isArray(tree)) return tree.map((each: unknown) => converted(each, value));
  return typeof tree === 'object' && tree !== null
    ? Object.fromEntries(Object.entries(tree).map(([name, each]) => [name, converted(each, value)]))
    : tree;
}

/** A printed value in other units; a figure that has left the fractions to six decimals again. */
export function valueInUnits(value: SettingValue, from: Units, to: Units): SettingValue {
  const exact = convertPrinted(value, from, to);
  if (exact !== null || from === to) return exact ?? value;
  const read = readPrinted(value, from);
  return printReal(realOf(to === 'mm' ? times(read, MM_IN_AN_INCH) : over(read, MM_IN_AN_INCH)));
}
