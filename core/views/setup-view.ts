import type { Drawing, Shape } from '../drawing/model.ts';
import type { Units } from '../length/units.ts';
import { leftToPare } from '../plan/left-to-pare.ts';
import type { PlaceName } from '../plan/place-name.ts';
import type { PlanPart, PlanStage } from '../plan/plan.ts';
import { partName, stageName } from '../telling/names.ts';
import { say } from '../words/say.ts';
import { stageShapes } from './stage-views.ts';

/**
 * A part as it lies on the machine for one stage, with its settings dimensioned from what they are measured from; one
 * place at a time. Made from the printed plan alone.
 */
export function setupView(part: PlanPart, stage: PlanStage, units: Units, place?: PlaceName): Drawing {
  const title = say('drawing.setup', { part: partName(part.part), stage: stageName(stage.stage) });
  return {
    title,
    units,
    shapes: stageShapes(part, stage, place).map((shape) => besideSet(shape, stage, units)),
  };
}

/** A dimension is called as its stage calls it; where the machine is set beside a line, the drawing shows the line, and says so. */
function besideSet(shape: Shape, { stage }: PlanStage, units: Units): Shape {
  if (shape.kind !== 'dimension') return shape;
  const line = leftToPare(stage, shape.name, shape.value, units) !== null;
  return { ...shape, stage, ...(line ? { isLine: true as const } : {}) };
}
