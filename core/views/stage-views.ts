import type { Shape } from '../drawing/model.ts';
import type { Units } from '../length/units.ts';
import type { PlaceName } from '../plan/place-name.ts';
import type { PlanPart, PlanStage, StageOf } from '../plan/plan.ts';
import { kindOf } from '../stages/stage-id.ts';
import type { STAGES, StageKind } from '../stages/table.ts';
import { archSetup, smoothSetup } from './arch-setups.ts';
import { cleanSetup } from './clean-setup.ts';
import { cutoutSetup } from './cutout-setup.ts';
import { grooveSetup } from './groove-setup.ts';
import { haunchSetup } from './haunch-setup.ts';
import { millSetup } from './mill-setup.ts';
import { mitreSetup, railMitreSetup } from './mitre-setups.ts';
import { mortiseSetup } from './mortise-setup.ts';
import { notchSetup } from './notch-setup.ts';
import { panelFront } from './panel-outline.ts';
import { pareSetup } from './pare-setup.ts';
import { raiseSetup } from './raise-setup.ts';
import { beadSetup, slotSetup } from './router-table-setups.ts';
import type { Sets } from './sets.ts';
import { cheekSetup, shoulderSetup } from './shoulder-setups.ts';
import { stripSetup } from './strip-setup.ts';
import { tenonSetup } from './tenon-setup.ts';

/** What is drawn of a part for a stage of a kind, at one of its places where it has several, its machine set so. */
type View<K extends StageKind> = (
  part: PlanPart,
  stage: StageOf<K>,
  place: PlaceName | undefined,
  sets: Sets,
  units: Units,
) => Shape[];

/** The kinds that are done to one part at a time. */
type PartKind = { [K in StageKind]: (typeof STAGES)[K]['of'] extends 'part' ? K : never }[StageKind];

/** The drawing of each kind of stage; a kind without one does not compile. A door's own are in door-setup. */
const VIEWS: { readonly [K in PartKind]: View<K> } = {
  mill: millSetup,
  arch: archSetup,
  smooth: smoothSetup,
  bead: beadSetup,
  groove: grooveSetup,
  slot: slotSetup,
  mortise: mortiseSetup,
  pare: pareSetup,
  'mitre-end': mitreSetup,
  notch: notchSetup,
  strip: stripSetup,
  clean: cleanSetup,
  shoulder: shoulderSetup,
  cheek: cheekSetup,
  mitre: railMitreSetup,
  tenon: tenonSetup,
  haunch: haunchSetup,
  cutout: cutoutSetup,
  raise: raiseSetup,
  finish: panelFront,
};

/** A part as it lies for a stage of its own; nothing for a stage of the door. */
export function stageShapes(
  part: PlanPart,
  stage: PlanStage,
  place: PlaceName | undefined,
  sets: Sets,
  units: Units,
): Shape[] {
  const kind = kindOf(stage.stage);
  if (kind === null || !hasView(kind)) return [];
  // The kind was read from this very stage's id, so its view takes it.
  const view = VIEWS[kind] as View<StageKind>;
  return view(part, stage, place, sets, units);
}

function hasView(kind: StageKind): kind is PartKind {
  return Object.hasOwn(VIEWS, kind);
}
