import type { Shown } from '../length/reading.ts';
import type { Hinge } from '../job/hinge-of.ts';
import type { PlanDoor, PlanStage } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
import { doorView } from './door-view.ts';
import type { Drawing } from '../drawing/model.ts';
import { trimView } from './trim-view.ts';

/** What is drawn for a stage of the whole door: its sizes for the dry fit, its diagonals for gluing up, what comes off for trimming. */
export function doorSetup(
  door: PlanDoor,
  stage: Pick<PlanStage, 'stage'>,
  units: Units,
  how: { readonly reading?: (value: string) => Shown; readonly hinge?: Hinge | undefined } = {},
): Drawing {
  if (stage.stage === 'trim') return trimView(door, units, how);
  return doorView(door, units, stage.stage === 'glue' ? 'glued' : 'built', how.hinge);
}
