import type { Drawing, Shape } from '../drawing/model.ts';
import { at, dimension } from '../drawing/shapes.ts';
import type { Units } from '../length/units.ts';
import { readPart } from '../plan/part-name.ts';
import { parsePlace, placeEnd } from '../plan/place-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { stageOf, stagesOf } from '../plan/stage-of.ts';
import type { SettingsOf } from '../stages/table.ts';
import { partName } from '../telling/names.ts';
import { drawn } from './drawn.ts';
import { panelFront } from './panel-outline.ts';
import { profileOf } from './profile.ts';
import { type RailEdge, railFront, sightEdges } from './rail-blank.ts';
import { stileBlank } from './stile-blank.ts';

const DATUM = { datum: true } as const;

/**
 * One part as seen from the front, finished, with its sizes and everything that is set out on it, each dimension from
 * the datum that its setting is measured from. A stile lies with its bottom end at the left, a panel stands.
 */
export function partView(part: PlanPart, units: Units): Drawing {
  return { title: partName(part.part), units, shapes: shapesOf(part) };
}

function shapesOf(part: PlanPart): Shape[] {
  switch (readPart(part).kind) {
    case 'stile':
      return [...stileBlank(part, { leftEnd: 'bottom', above: 'bead' }), ...stileDimensions(part)];
    case 'rail':
      return [...railFront(part), ...railDimensions(part)];
    case 'panel':
      return [...panelFront(part), ...panelDimensions(part)];
  }
}

/** Mortises above, mitres below, each from its own end; mid ones from the end that their setting names. */
function stileDimensions(part: PlanPart): Shape[] {
  const { length, width, bead } = profileOf(part);
  const mitres = stagesOf(part, 'mitre-end');
  const mortise = stageOf(part, 'mortise');
  const beaded = stageOf(part, 'bead')?.settings;
  const last = Math.max(1, mitres.length - 1) + 1;
  const depth = mortise?.settings.depthFromEdge;
  return [
    ...mitres.map(({ settings: { fromEnd, sightEdge } }, k) => {
      const x = alongStile(length, fromEnd);
      const row = k < 2 ? 1 : k;
      return dimension(
        'sightEdge',
        sightEdge,
        at(x(0), width),
        at(x(drawn(sightEdge)), width),
        'below',
        row,
        DATUM,
      );
    }),
    ...(mortise === undefined ? [] : mortiseDimensions(mortise, length, width)),
    dimension('length', part.length, at(0, 0), at(length, 0), 'below', last),
    dimension('width', part.width, at(0, 0), at(0, width), 'left', 1),
    ...(beaded === undefined
      ? []
      : [dimension('bead', beaded.bead, at(length, width), at(length, width - bead), 'right', 1, DATUM)]),
    ...(depth === undefined
      ? []
      : [
          dimension(
            'depthFromEdge',
            depth,
            at(length, width),
            at(length, width - drawn(depth)),
            'right',
            2,
            DATUM,
          ),
        ]),
  ];
}

/** Where something so far from this end of a stile is drawn, its bottom end at the left. */
function alongStile(length: number, end: 'top' | 'bottom'): (far: number) => number {
  return (far) => (end === 'top' ? length - far : far);
}

/** Where each mortise starts and stops, the outer ones nearest to the drawing. */
function mortiseDimensions({ places }: StageOf<'mortise'>, length: number, width: number): Shape[] {
  return places.flatMap(({ at: place, settings }) => {
    const x = alongStile(length, placeEnd(place));
    const read = parsePlace(place);
    const first = read?.at === 'mid' ? 1 + 2 * read.k : 1;
    return (['start', 'stop'] as const).map((name, k) =>
      dimension(
        name,
        settings[name],
        at(x(0), width),
        at(x(drawn(settings[name])), width),
        'above',
        first + k,
        { ...DATUM, place },
      ),
    );
  });
}

/** How a rail's dimensions stand: its sight edge and its outer one, and the sides they are at. */
interface RailSides {
  readonly sight: number;
  readonly outer: number;
  readonly sightSide: RailEdge;
  readonly outerSide: RailEdge;
}

function sidesOf(part: PlanPart): RailSides {
  const { width } = profileOf(part);
  return sightEdges(part).includes('above')
    ? { sight: width, outer: 0, sightSide: 'above', outerSide: 'below' }
    : { sight: 0, outer: width, sightSide: 'below', outerSide: 'above' };
}

/** Shoulder and mitre from the end, the tenon from the rail's edges, the arch from its end and its flats. */
function railDimensions(part: PlanPart): Shape[] {
  const { length, width } = profileOf(part);
  const sides = sidesOf(part);
  const { sight, outer, sightSide, outerSide } = sides;
  const [shoulder, mitre] = [stageOf(part, 'shoulder')?.settings, stageOf(part, 'mitre')?.settings];
  const [tenon, arch] = [stageOf(part, 'tenon')?.settings, stageOf(part, 'arch')?.settings];
  const fromEnd = (name: string, value: string | undefined, y: number, side: RailEdge, row: number) =>
    value === undefined ? [] : [dimension(name, value, at(0, y), at(drawn(value), y), side, row, DATUM)];
  return [
    ...fromEnd('shoulderLine', shoulder?.stop, sight, sightSide, 1),
    ...fromEnd('sightEdge', mitre?.sightEdge, sight, sightSide, 2),
    ...fromEnd('outerStop', tenon?.outerStop, outer, outerSide, 1),
    dimension('length', part.length, at(0, outer), at(length, outer), outerSide, 2),
    ...(tenon === undefined ? [] : tenonDimensions(tenon, sides)),
    dimension('width', part.width, at(length, 0), at(length, width), 'right', arch === undefined ? 1 : 2),
    ...(arch === undefined ? [] : archDimensions(arch, length, sides)),
  ];
}

/** The tenon's edges from the edges of the rail, and what stays between them. */
function tenonDimensions(
  { innerHeight, outerHeight, width: wide }: SettingsOf<'tenon'>,
  { sight, outer }: RailSides,
): Shape[] {
  const inwards = (edge: number, depth: string) => (edge === 0 ? drawn(depth) : edge - drawn(depth));
  const innerEdge = inwards(sight, innerHeight);
  const tenonFrom = Math.min(innerEdge, inwards(outer, outerHeight ?? innerHeight));
  return [
    dimension('innerHeight', innerHeight, at(0, sight), at(0, innerEdge), 'left', 1, DATUM),
    ...(outerHeight === undefined
      ? []
      : [
          dimension(
            'outerHeight',
            outerHeight,
            at(0, outer),
            at(0, inwards(outer, outerHeight)),
            'left',
            1,
            DATUM,
          ),
        ]),
    dimension('tenonWidth', wide, at(0, tenonFrom), at(0, tenonFrom + drawn(wide)), 'left', 2),
  ];
}

function archDimensions(
  { rise, springing, chord }: SettingsOf<'arch'>,
  length: number,
  { sight, sightSide }: RailSides,
): Shape[] {
  const far = length - drawn(springing);
  return [
    dimension('rise', rise, at(length, 0), at(length / 2, drawn(rise)), 'right', 1, DATUM),
    dimension('springing', springing, at(length, sight), at(far, sight), sightSide, 1, DATUM),
    dimension('chord', chord, at(drawn(springing), sight), at(far, sight), sightSide, 3),
  ];
}

/** Width and height; under an arch also its flats, its chord, and the height of the sides. */
function panelDimensions(part: PlanPart): Shape[] {
  const [width, height] = [drawn(part.width), drawn(part.length)];
  const cutout = stageOf(part, 'cutout')?.settings;
  return [
    dimension('width', part.width, at(0, 0), at(width, 0), 'below', 1),
    dimension('length', part.length, at(0, 0), at(0, height), 'left', 1, DATUM),
    ...(cutout === undefined ? [] : headDimensions(cutout, width, height)),
  ];
}

function headDimensions(
  { sideHeight, rise, flat, chord }: SettingsOf<'cutout'>,
  width: number,
  height: number,
): Shape[] {
  const [side, from] = [drawn(sideHeight), drawn(flat)];
  return [
    dimension('sideHeight', sideHeight, at(width, 0), at(width, side), 'right', 1, DATUM),
    dimension('rise', rise, at(width, side), at(width / 2, height), 'right', 2, DATUM),
    dimension('flat', flat, at(0, side), at(from, side), 'above', 1, DATUM),
    dimension('chord', chord, at(from, side), at(width - from, side), 'above', 2),
  ];
}
