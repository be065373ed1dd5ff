import type { Drawing } from '../drawing/model.ts';
import type { Hinge } from '../job/hinge-of.ts';
import type { Shown } from '../length/reading.ts';
import type { Units } from '../length/units.ts';
import type { PlanDoor, PlanStage } from '../plan/plan.ts';
import { DOOR_STAGES } from '../stages/table.ts';
import { doorView } from './door-view.ts';
import { trimView } from './trim-view.ts';

/** How a door's drawing is made: how an amount is read, and the hinge side where that is known. */
export interface DoorHow {
  readonly reading?: (value: string) => Shown;
  readonly hinge?: Hinge | undefined;
}

type View = (door: PlanDoor, units: Units, how: DoorHow) => Drawing;

/** The drawing of each stage of a door: its diagonals, dry and glued up; what comes off; a stage without one does not compile. */
const VIEWS: Readonly<Record<(typeof DOOR_STAGES)[number], View>> = {
  dryfit: (door, units, { hinge }) => doorView(door, units, 'checked', hinge),
  glue: (door, units, { hinge }) => doorView(door, units, 'checked', hinge),
  trim: trimView,
};

/** What is drawn for a stage of the whole door; all its sizes as built for any other. */
export function doorSetup(
  door: PlanDoor,
  { stage }: Pick<PlanStage, 'stage'>,
  units: Units,
  how: DoorHow = {},
): Drawing {
  const own = DOOR_STAGES.find((each) => each === stage);
  return own === undefined ? doorView(door, units, 'built', how.hinge) : VIEWS[own](door, units, how);
}
