import type { Units } from '#core/length/units.ts';
import { MEASURES } from '#core/length/reading.ts';
import type { PlanDoor } from '#core/plan/plan.ts';
import { type DoorOnScreen, doorOnScreen } from '#core/settable/door-on-screen.ts';
import { shop } from '../hub/shop.svelte.ts';
import { measure } from './measure.svelte.ts';

/** A door of a job in these units as this screen reads it: in the measure chosen here, to the shop's rounding. */
export function settableHere(door: PlanDoor, units: Units): DoorOnScreen {
  return doorOnScreen(door, units, measure.of(units), shop.rounding);
}

/** The same in the job's own measure, where a screen offers no other. */
export function settableOwn(door: PlanDoor, units: Units): PlanDoor {
  return doorOnScreen(door, units, MEASURES[units][0], shop.rounding).door;
}
