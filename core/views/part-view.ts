import type { PlanPart } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
import { partName } from '../telling/names.ts';
import type { Drawing, Shape } from '../drawing/model.ts';
import { panelFront } from './panel-outline.ts';
import { drawn, profileOf, stageOf } from './plan-number.ts';
import { railFront, sightEdges } from './rail-blank.ts';
import { at, dimension } from '../drawing/shapes.ts';
import { stileBlank } from './stile-blank.ts';

/**
 * One part as seen from the front, finished, with its sizes and everything that is set out on it, each dimension from
 * the datum that its setting is measured from. A stile lies with its bottom end at the left, a panel stands.
 */
export function partView(part: PlanPart, units: Units): Drawing {
  const shapes = part.part.startsWith('stile')
    ? [...stileBlank(part, { leftEnd: 'bottom', above: 'bead' }), ...stileDimensions(part)]
    : part.part.startsWith('panel')
      ? [...panelFront(part), ...panelDimensions(part)]
      : [...railFront(part), ...railDimensions(part)];
  return { title: partName(part.part), units, shapes };
}

/** Mortises above, mitres below, each from its own end; mid ones from the end that their setting names. */
function stileDimensions(part: PlanPart): Shape[] {
  const { length, width, bead } = profileOf(part);
  const along = (end: 'top' | 'bottom', far: number) => (end === 'top' ? length - far : far);
  const shapes: Shape[] = [];
  const mitres = part.stages.filter(({ stage }) => stage.startsWith('mitre-'));
  for (const [k, { settings }] of mitres.entries()) {
    const end = settings.fromEnd === 'top' ? 'top' : 'bottom';
    const row = k < 2 ? 1 : k;
    shapes.push(
      ...dimension(
        'sightEdge',
        settings.sightEdge,
        at(along(end, 0), width),
        at(along(end, drawn(settings.sightEdge)), width),
        'below',
        row,
        { datum: true },
      ),
    );
  }
  const mortise = stageOf(part, 'mortise');
  let mids = 0;
  for (const { at: place, settings } of mortise?.places ?? []) {
    const end = place === 'top' ? 'top' : 'bottom';
    const first = place.startsWith('mid') ? 3 + 2 * mids++ : 1;
    for (const [k, name] of (['start', 'stop'] as const).entries())
      shapes.push(
        ...dimension(
          name,
          settings[name],
          at(along(end, 0), width),
          at(along(end, drawn(settings[name])), width),
          'above',
          first + k,
          { datum: true, place },
        ),
      );
  }
  const last = Math.max(1, mitres.length - 1) + 1;
  return [
    ...shapes,
    ...dimension('length', part.length, at(0, 0), at(length, 0), 'below', last),
    ...dimension('width', part.width, at(0, 0), at(0, width), 'left', 1),
    ...dimension(
      'bead',
      stageOf(part, 'bead')?.settings.bead,
      at(length, width),
      at(length, width - bead),
      'right',
      1,
      { datum: true },
    ),
    ...dimension(
      'depthFromEdge',
      mortise?.settings.depthFromEdge,
      at(length, width),
      at(length, width - drawn(mortise?.settings.depthFromEdge)),
      'right',
      2,
      { datum: true },
    ),
  ];
}

/** Shoulder and mitre from the end, the tenon from the rail's edges, the arch from its end and its flats. */
function railDimensions(part: PlanPart): Shape[] {
  const { length, width } = profileOf(part);
  const [shoulder, tenon, arch, mitre] = ['shoulder', 'tenon', 'arch', 'mitre'].map(
    (name) => stageOf(part, name)?.settings,
  );
  const sightAbove = sightEdges(part).includes('above');
  const [sightSide, outerSide] = sightAbove ? (['above', 'below'] as const) : (['below', 'above'] as const);
  const [sight, outer] = sightAbove ? [width, 0] : [0, width];
  const inwards = (edge: number, depth: number) => (edge === 0 ? depth : edge - depth);
  const innerEdge = inwards(sight, drawn(tenon?.innerHeight));
  const tenonFrom = Math.min(innerEdge, inwards(outer, drawn(tenon?.outerHeight ?? tenon?.innerHeight)));
  const datum = { datum: true } as const;
  return [
    ...dimension(
      'shoulderLine',
      shoulder?.stop,
      at(0, sight),
      at(drawn(shoulder?.stop), sight),
      sightSide,
      1,
      datum,
    ),
    ...dimension(
      'sightEdge',
      mitre?.sightEdge,
      at(0, sight),
      at(drawn(mitre?.sightEdge), sight),
      sightSide,
      2,
      datum,
    ),
    ...dimension(
      'outerStop',
      tenon?.outerStop,
      at(0, outer),
      at(drawn(tenon?.outerStop), outer),
      outerSide,
      1,
      datum,
    ),
    ...dimension('length', part.length, at(0, outer), at(length, outer), outerSide, 2),
    ...dimension('innerHeight', tenon?.innerHeight, at(0, sight), at(0, innerEdge), 'left', 1, datum),
    ...dimension(
      'outerHeight',
      tenon?.outerHeight,
      at(0, outer),
      at(0, inwards(outer, drawn(tenon?.outerHeight))),
      'left',
      1,
      datum,
    ),
    ...dimension(
      'tenonWidth',
      tenon?.width,
      at(0, tenonFrom),
      at(0, tenonFrom + drawn(tenon?.width)),
      'left',
      2,
    ),
    ...dimension('width', part.width, at(length, 0), at(length, width), 'right', arch === undefined ? 1 : 2),
    ...dimension('rise', arch?.rise, at(length, 0), at(length / 2, drawn(arch?.rise)), 'right', 1, datum),
    ...dimension(
      'springing',
      arch?.springing,
      at(length, sight),
      at(length - drawn(arch?.springing), sight),
      sightSide,
      1,
      datum,
    ),
    ...dimension(
      'chord',
      arch?.chord,
      at(drawn(arch?.springing), sight),
      at(length - drawn(arch?.springing), sight),
      sightSide,
      3,
    ),
  ];
}

/** Width and height; under an arch also its flats, its chord, and the height of the sides. */
function panelDimensions(part: PlanPart): Shape[] {
  const [width, height] = [drawn(part.width), drawn(part.length)];
  const cutout = stageOf(part, 'cutout')?.settings;
  const [side, flat] = [drawn(cutout?.sideHeight), drawn(cutout?.flat)];
  const datum = { datum: true } as const;
  return [
    ...dimension('width', part.width, at(0, 0), at(width, 0), 'below', 1),
    ...dimension('length', part.length, at(0, 0), at(0, height), 'left', 1, datum),
    ...dimension('sideHeight', cutout?.sideHeight, at(width, 0), at(width, side), 'right', 1, datum),
    ...dimension('rise', cutout?.rise, at(width, side), at(width / 2, height), 'right', 2, datum),
    ...dimension('flat', cutout?.flat, at(0, side), at(flat, side), 'above', 1, datum),
    ...dimension('chord', cutout?.chord, at(flat, side), at(width - flat, side), 'above', 2),
  ];
}
