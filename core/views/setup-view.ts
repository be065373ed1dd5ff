import { leftToPare } from '../plan/left-to-pare.ts';
import type { PlanPart, PlanStage } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
import { partName, stageName } from '../telling/names.ts';
import { say } from '../words/say.ts';
import type { Drawing, Shape } from '../drawing/model.ts';
import { cutoutSetup } from './cutout-setup.ts';
import { panelFront } from './panel-outline.ts';
import { drawn } from './plan-number.ts';
import {
  archSetup,
  cheekSetup,
  haunchSetup,
  railBench,
  railMitreSetup,
  shoulderSetup,
  tenonSetup,
} from './rail-setups.ts';
import { grooveSetup, pareSetup, raiseSetup, tableCutterSetup } from './section-setups.ts';
import { area, at, dimension, label, rectangle, symbol } from '../drawing/shapes.ts';
import { mitreSetup, mortiseSetup, notchSetup } from './stile-setups.ts';
import { member, stileBlank } from './stile-blank.ts';
import { stripSetup } from './strip-setup.ts';

/**
 * A part as it lies on the machine for one stage, with its settings dimensioned from what they are measured from; one
 * place at a time. Made from the printed plan alone.
 */
export function setupView(part: PlanPart, stage: PlanStage, units: Units, place?: string): Drawing {
  const title = say('drawing.setup', { part: partName(part.part), stage: stageName(stage.stage) });
  const shapes = shapesFor(part, stage, place);
  return { title, units, shapes: shapes.map((shape) => besideSet(shape, stage, units)) };
}

/** A dimension is called as its stage calls it; where the machine is set beside a line, the drawing shows the line, and says so. */
function besideSet(shape: Shape, { stage }: PlanStage, units: Units): Shape {
  if (shape.kind !== 'dimension') return shape;
  const line = leftToPare(stage, shape.name, shape.value, units) !== null;
  return { ...shape, stage, ...(line ? { isLine: true as const } : {}) };
}

function shapesFor(part: PlanPart, stage: PlanStage, place: string | undefined): Shape[] {
  const stile = part.part.startsWith('stile');
  switch (stage.stage) {
    case 'mill':
      return millSetup(part, stage);
    case 'mortise':
      return mortiseSetup(part, stage, place);
    case 'strip':
      return stripSetup(part, stage, place);
    case 'bead':
    case 'slot':
      return tableCutterSetup(part, stage);
    case 'groove':
      return grooveSetup(part, stage);
    case 'pare':
      return pareSetup(part, stage);
    case 'arch':
    case 'smooth':
      return archSetup(part, stage);
    case 'shoulder':
      return shoulderSetup(part, stage);
    case 'cheek':
      return cheekSetup(part, stage);
    case 'mitre':
      return railMitreSetup(part, stage);
    case 'tenon':
      return tenonSetup(part, stage);
    case 'haunch':
      return haunchSetup(part, stage);
    case 'raise':
      return raiseSetup(part, stage);
    case 'cutout':
      return cutoutSetup(part, stage);
    default:
      if (stage.stage.startsWith('notch-')) return notchSetup(part, stage);
      if (stage.stage.startsWith('mitre-')) return mitreSetup(part, stage);
      return stile
        ? stileBlank(part, { leftEnd: 'bottom', above: 'bead' })
        : part.part.startsWith('panel')
          ? panelFront(part)
          : railBench(part);
  }
}

/** The blank with its three sizes. A stile lies with its bottom end at the left; the end section stands beside it. */
function millSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const { settings } = stage;
  const panel = part.part.startsWith('panel');
  const [long, high] = panel
    ? ([settings.width, settings.length] as const)
    : ([settings.length, settings.width] as const);
  const [whole, y, thickness] = [drawn(long), drawn(high), drawn(settings.thickness)];
  // What is long and thin loses its middle, so that what is written on it can be read.
  const broken = whole > y * LONG;
  const x = broken ? y * LONG * 0.75 : whole;
  const gap = Math.min(x, y) * 0.5;
  const half = y * 0.08;
  return [
    ...(broken
      ? [
          area(member(0, x / 2 - half, y, { left: false, right: true }), 'outline', 'wood'),
          area(member(x / 2 + half, x, y, { left: true, right: false }), 'outline', 'wood'),
        ]
      : [area(rectangle(0, 0, x, y), 'outline', 'wood')]),
    area(rectangle(x + gap, 0, x + gap + thickness, y), 'edge', 'section'),
    ...(panel
      ? [
          symbol('arrow-up', at(x / 2, y * 0.6), 'top'),
          label(say('drawing.top'), at(x / 2, y * 0.75), 'end-name', 'large'),
        ]
      : []),
    ...(part.part.startsWith('stile')
      ? [
          label(say('drawing.bottom'), at(x * 0.04, y / 2), 'end-name', 'large', 'start', y * 0.7),
          label(say('drawing.top'), at(x * 0.96, y / 2), 'end-name', 'large', 'end', y * 0.7),
        ]
      : []),
    ...dimension(
      panel ? 'width' : 'length',
      long,
      at(0, 0),
      at(x, 0),
      'below',
      1,
      broken ? { brokenAt: x / 2 } : {},
    ),
    ...dimension(panel ? 'length' : 'width', high, at(0, 0), at(0, y), 'left', 1),
    ...dimension('thickness', settings.thickness, at(x + gap, y), at(x + gap + thickness, y), 'above', 1),
  ];
}

/** A blank longer than so many of its widths is drawn broken. */
const LONG = 7;
