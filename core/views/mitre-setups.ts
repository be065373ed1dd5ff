import type { Shape } from '../drawing/model.ts';
import { area, at, dimension, label, polygon, stroke } from '../drawing/shapes.ts';
import type { PlaceName } from '../plan/place-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { allEnds, endReach, railEnd, standing } from './rail-setups.ts';
import { sightEdges } from './rail-blank.ts';
import { gaugeOver, tableUnder } from './saw-tools.ts';
import { ghostAt, type Sets } from './sets.ts';
import { drawnEnd, placed, stileBlank } from './stile-blank.ts';
import { BLOCK, faceNote, fromEnd, lieFor, stopBlock } from './stile-setups.ts';

/** How thick the table is drawn, how high the gauge over the piece, and how far a finished line from its cut at least, in widths of a stile. */
const TABLE = 0.17;
const GAUGE = 0.17;
const APART = 0.06;

/** A mitre of a stile: this end against the stop, sight edge down, the blade leaning toward the stop; what is set is where its far face meets the table. */
export function mitreSetup(
  part: PlanPart,
  { settings }: StageOf<'mitre-end'>,
  _place: PlaceName | undefined,
  sets: Sets,
): Shape[] {
  const { width } = profileOf(part);
  const { at: set, line } = sets('sightEdge', settings.sightEdge);
  const [cut, sight, shoulder] = [drawn(set), drawn(line ?? set), drawn(settings.shoulderLine)];
  const lie = lieFor(part, { leftEnd: settings.fromEnd, above: 'outer' }, Math.min(cut, shoulder), sight);
  const x = (along: number) => placed(lie, width, along).x;
  const end = drawnEnd(part, lie);
  const height = drawn(settings.height);
  const whole = { from: -width * BLOCK, to: end };
  return [
    ...gaugeOver(whole, width, width * GAUGE),
    ...stileBlank(part, lie),
    ...stopBlock(width),
    ...tableUnder(whole, width * TABLE, 'drawing.sight-edge-down'),
    ...leaningBlade(x(cut), height, width),
    ...(line === null ? [] : finishedMitre(x(cut), x(sight), x(shoulder), width)),
    ...faceNote(part, lie),
    fromEnd(part, lie, 'shoulderLine', settings.shoulderLine, 0, 'above', 1, { toY: sight - shoulder }),
    fromEnd(part, lie, 'sightEdge', set, 0, 'below', 1),
    dimension('height', settings.height, at(end, 0), at(end, height), 'right', 1, { datum: true }),
  ];
}

/** The rail’s mitre: its end against the stop, sight edge down. Both ends alike, and on a mid rail both edges. */
export function railMitreSetup(
  part: PlanPart,
  { settings: s }: StageOf<'mitre'>,
  _place: PlaceName | undefined,
  sets: Sets,
): Shape[] {
  const { width, bead } = profileOf(part);
  const { at: set, line } = sets('sightEdge', s.sightEdge);
  const [cut, sight, shoulder] = [drawn(set), drawn(line ?? set), drawn(s.shoulderLine)];
  const height = drawn(s.height);
  const reach = endReach(part);
  const unit = Math.min(width, reach * 0.6);
  const stand = standing(unit);
  const both = sightEdges(part).length === 2;
  const other = both
    ? [
        area(stroke(at(0, width - bead), at(reach, width - bead)), 'bead-line', 'none', 'fine'),
        area(stroke(at(shoulder, width - bead), at(sight, width)), 'mitre-other-edge', 'none', 'hidden'),
        label(say('drawing.bead-edge'), at(reach * 0.96, width * 0.9), 'edge-name', 'small', 'end'),
      ]
    : [];
  return [
    ...railEnd(part, reach, stand),
    ...tableUnder({ from: -stand.block, to: reach }, unit * TABLE, 'drawing.sight-edge-down'),
    ...other,
    ...leaningBlade(cut, height, unit),
    ...(line === null ? [] : finishedMitre(cut, sight, shoulder, unit)),
    ...allEnds(part, (sight + reach) / 2),
    dimension('shoulderLine', s.shoulderLine, at(0, width), at(shoulder, bead), 'above', 1, { datum: true }),
    dimension('sightEdge', set, at(0, 0), at(cut, 0), 'below', 1, { datum: true }),
    dimension('height', s.height, at(reach, 0), at(reach, height), 'right', 1, { datum: true }),
  ];
}

/** The tilted blade through the table, leaning toward the stop at the left: its far face meets the table at x = far, and is the cut. */
function leaningBlade(far: number, height: number, width: number): Shape[] {
  const kerf = height * 0.5;
  const low = -Math.max(height * 1.5, width * 0.34);
  const tip = at(far - height, height);
  return [
    area(
      polygon([tip, at(tip.x - kerf, height), at(far - kerf - low, low), at(far - low, low)]),
      'blade',
      'tool',
    ),
    area(stroke(at(far, 0), tip), 'mitre', 'none', 'cut'),
    label(say('drawing.blade'), at(far - low + width * 0.06, low * 0.8), 'blade-name', 'small', 'start'),
  ];
}

/** The line that a mitre is pared to beyond the cut, drawn on a little where the bead ends, with its name led to it. */
function finishedMitre(cut: number, sight: number, shoulder: number, width: number): Shape[] {
  const off = ghostAt(cut, sight, width * APART);
  const bead = sight - shoulder;
  const long = bead * 1.6;
  const name = at(off + width * 0.1, Math.max(bead, width * 0.17) + width * 0.14);
  return [
    area(stroke(at(off, 0), at(off - long, long)), 'finished-line', 'none', 'ghost'),
    area(
      stroke(at(off - bead * 0.3, bead * 0.3), at(name.x + width * 0.05, name.y - width * 0.06)),
      'leader',
      'none',
      'fine',
    ),
    label(say('drawing.finished-line'), name, 'line-name', 'small', 'start'),
  ];
}
