import type { Drawing, Shape } from '../drawing/model.ts';
import type { Units } from '../length/units.ts';
import type { PlaceName } from '../plan/place-name.ts';
import type { PlanPart, PlanStage, Settings } from '../plan/plan.ts';
import type { Step } from '../settable/step.ts';
import { partName, stageName } from '../telling/names.ts';
import { say } from '../words/say.ts';
import { setsOf, type Sets } from './sets.ts';
import { stageShapes } from './stage-views.ts';

/**
 * A part as it lies on the machine for one stage, with what is set dimensioned from what it is measured from; one place
 * at a time. Made from the printed plan alone. Where a machine is set beside a line, its tool stands where it is set: to the
 * step that a screen reads, exactly where none is given.
 */
export function setupView(
  part: PlanPart,
  stage: PlanStage,
  units: Units,
  place?: PlaceName,
  step?: Step,
): Drawing {
  const title = say('drawing.setup', { part: partName(part.part), stage: stageName(stage.stage) });
  const sets = setsOf(stage.stage, units, step);
  const settings = settingsAt(stage, place);
  return {
    title,
    units,
    shapes: stageShapes(part, stage, place, sets, units).map((shape) =>
      asCalled(shape, stage, settings, sets),
    ),
  };
}

/** What a stage sets, and what it sets at this place. */
function settingsAt(stage: PlanStage, place: PlaceName | undefined): Settings {
  const here = stage.places?.find(({ at }) => at === place);
  return { ...stage.settings, ...here?.settings };
}

/** A dimension is called as its stage calls it; one that the machine is set to beside a line is named as set. */
function asCalled(shape: Shape, { stage }: PlanStage, settings: Settings, sets: Sets): Shape {
  if (shape.kind !== 'dimension') return shape;
  const planned = settings[shape.name];
  const beside = typeof planned === 'string' && sets(shape.name, planned).line !== null;
  return { ...shape, stage, ...(beside ? { isSet: true as const } : {}) };
}
