import type { Measure, Rounding } from '../length/reading.ts';
import type { Units } from '../length/units.ts';
import type { PlanDoor } from '../plan/plan.ts';
import { doorInUnits } from './in-units.ts';
import { settableDoor } from './settable-door.ts';
import { screenStep, type Step } from './step.ts';

/** A door as a screen reads it. */
export interface DoorOnScreen {
  /** By the plan, in the units that are read. */
  readonly exact: PlanDoor;
  /** In settable numbers. */
  readonly door: PlanDoor;
  /** Whose units are those that are read. */
  readonly step: Step;
}

/** A door of a job in these units, exact and in settable numbers, in the measure that a screen reads and to the shop's rounding. */
export function doorOnScreen(
  door: PlanDoor,
  units: Units,
  measure: Measure,
  rounding: Rounding,
): DoorOnScreen {
  const step = screenStep(measure, rounding);
  const exact = doorInUnits(door, units, step.units);
  return { exact, door: settableDoor(exact, step), step };
}
