import { showValue } from '#core/length/reading.ts';
import type { PlanDoor } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';

/** The edges of a door from the front, and the two ends of each. */
export const EDGES = ['left', 'right', 'bottom', 'top'] as const;
export type Edge = (typeof EDGES)[number];
export type TakeOff = NonNullable<PlanDoor['values']['survey']>['takeOff'];

/** What comes off at one end of one edge, as the plan prints it. */
export interface Amount {
  readonly edge: Edge;
  readonly end: Edge;
  readonly value: string;
}

/** The eight amounts, edge by edge. */
export function amountsOf(takeOff: TakeOff): Amount[] {
  return [
    { edge: 'left', end: 'top', value: takeOff.left.top },
    { edge: 'left', end: 'bottom', value: takeOff.left.bottom },
    { edge: 'right', end: 'top', value: takeOff.right.top },
    { edge: 'right', end: 'bottom', value: takeOff.right.bottom },
    { edge: 'bottom', end: 'left', value: takeOff.bottom.left },
    { edge: 'bottom', end: 'right', value: takeOff.bottom.right },
    { edge: 'top', end: 'left', value: takeOff.top.left },
    { edge: 'top', end: 'right', value: takeOff.top.right },
  ];
}

/** Is there a gap instead, because the door as built ends before the opening does? What is too little to be shown is none. */
export function isGap(value: string, units: Units): boolean {
  return showValue(value, units).whole.startsWith('-');
}

/** Does the door as built leave a gap anywhere? Then nothing is to be trimmed. */
export function hasGap(takeOff: TakeOff, units: Units): boolean {
  return amountsOf(takeOff).some(({ value }) => isGap(value, units));
}
