import type { PlanPart, PlanStage, Units } from '../plan/plan.ts';
import { partName, stageName } from '../words/names.ts';
import { say } from '../words/say.ts';
import type { Drawing, Shape } from './model.ts';
import { panelFront, panelOutline } from './panel-outline.ts';
import { drawn } from './plan-number.ts';
import {
  archSetup,
  haunchSetup,
  railBench,
  railMitreSetup,
  shoulderSetup,
  tenonSetup,
} from './rail-setups.ts';
import { cheekSetup, grooveSetup, pareSetup, raiseSetup, tableCutterSetup } from './section-setups.ts';
import { area, at, dimension, label, rectangle, stroke, symbol } from './shapes.ts';
import { mitreSetup, mortiseSetup, notchSetup, stripSetup } from './stile-setups.ts';
import { stileBlank } from './stile-blank.ts';

/**
 * A part as it lies on the machine for one stage, with its settings dimensioned from what they are measured from; one
 * place at a time. Made from the printed plan alone.
 */
export function setupView(part: PlanPart, stage: PlanStage, units: Units, place?: string): Drawing {
  const title = say('drawing.setup', { part: partName(part.part), stage: stageName(stage.stage) });
  return { title, units, shapes: shapesFor(part, stage, place) };
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
  const [length, width, thickness] = [
    drawn(stage.settings.length),
    drawn(stage.settings.width),
    drawn(stage.settings.thickness),
  ];
  const panel = part.part.startsWith('panel');
  const [x, y] = panel ? [width, length] : [length, width];
  const gap = Math.min(x, y) * 0.5;
  return [
    area(rectangle(0, 0, x, y), 'outline', 'wood'),
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
      panel ? stage.settings.width : stage.settings.length,
      at(0, 0),
      at(x, 0),
      'below',
      1,
    ),
    ...dimension(
      panel ? 'length' : 'width',
      panel ? stage.settings.length : stage.settings.width,
      at(0, 0),
      at(0, y),
      'left',
      1,
    ),
    ...dimension(
      'thickness',
      stage.settings.thickness,
      at(x + gap, y),
      at(x + gap + thickness, y),
      'above',
      1,
    ),
  ];
}

/** The panel's arched head, sawn with the trammel about the same pivot as the rail's arch. */
function cutoutSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const s = stage.settings;
  const [width, height, side] = [drawn(s.width), drawn(s.height), drawn(s.sideHeight)];
  const centre = drawn(s.centre);
  const pivot = side - drawn(s.pivot);
  const flat = drawn(s.flat);
  return [
    area(rectangle(0, 0, width, height), 'blank', 'none', 'fine'),
    area(panelOutline(part), 'outline', 'wood', 'cut'),
    area(stroke(at(centre, 0), at(centre, height)), 'centre-line', 'none', 'centre'),
    symbol('pivot', at(centre, pivot), 'pivot'),
    symbol('arrow-up', at(width * 0.5, side * 0.2), 'top'),
    label(say('drawing.top'), at(width * 0.5, side * 0.27), 'end-name', 'large'),
    ...dimension('width', s.width, at(0, 0), at(width, 0), 'below', 2),
    ...dimension('centre', s.centre, at(0, 0), at(centre, 0), 'below', 1, { datum: true }),
    ...dimension('sideHeight', s.sideHeight, at(0, 0), at(0, side), 'left', 1, { datum: true }),
    ...dimension('height', s.height, at(0, 0), at(0, height), 'left', 2, { datum: true }),
    ...dimension('pivot', s.pivot, at(width, side), at(centre, pivot), 'right', 1, { datum: true }),
    ...dimension('rise', s.rise, at(width, side), at(centre, height), 'right', 2, { datum: true }),
    ...dimension('flat', s.flat, at(0, side), at(flat, side), 'above', 1, { datum: true }),
    ...dimension('chord', s.chord, at(flat, side), at(width - flat, side), 'above', 2),
    ...dimension('radius', s.radius, at(centre, pivot), at(width - flat, side), 'along', 0, { datum: true }),
  ];
}
