import type { Path, Point, Shape } from '../drawing/model.ts';
import { area, at, label, polygon, rectangle, stroke } from '../drawing/shapes.ts';
import { readPart } from '../plan/part-name.ts';
import type { PlanPart } from '../plan/plan.ts';
import { stagesOf } from '../plan/stage-of.ts';
import { partName } from '../telling/names.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { railFront, shoulderOf, sightEdges } from './rail-blank.ts';
import { stileBlank } from './stile-blank.ts';

/**
 * Paring to the line: the whole part with every line that is pared, drawn as a cut; and below it one of its miters,
 * larger, with the guide block against it and the chisel flat on the block. Nothing is set.
 */
export function cleanSetup(part: PlanPart): Shape[] {
  const { length, width } = profileOf(part);
  const stile = readPart(part).kind === 'stile';
  const whole = stile ? stileToPare(part) : railToPare(part);
  const large = length * (stile ? 0.2 : 0.23);
  return [...whole, ...atTheMiter(length * 0.44, -Math.max(width * 0.45, large * 0.3), large, stile)];
}

/** A stile, sight edge up, its bead gone behind the rails: the miters and the lengths between them and the ends. */
function stileToPare(part: PlanPart): Shape[] {
  const { width, bead } = profileOf(part);
  const gone = strippedOf(part);
  return [
    ...stileBlank(part, { leftEnd: 'bottom', above: 'bead' }),
    ...gone
      .slice(1, -1)
      .map(([from, to], k) =>
        label(partName(`rail-mid-${k + 1}`), at((from + to) / 2, -width * 0.3), 'mid-name', 'small'),
      ),
    ...gone.map(([from, to]) => area(rectangle(from, width - bead, to, width), 'stripped', 'paper', 'fine')),
    ...gone.map(([from, to]) =>
      area(stroke(at(from, width - bead), at(to, width - bead)), 'pare-length', 'none', 'cut'),
    ),
    ...mitresOf(part).map(({ line, sight }) =>
      area(stroke(at(line, width - bead), at(sight, width)), 'pare-mitre', 'none', 'cut'),
    ),
  ];
}

/** Both ends of a stile's miters, from its bottom end: where they meet the shoulder line and where the sight edge. */
function mitresOf(part: PlanPart): { readonly line: number; readonly sight: number }[] {
  const { length } = profileOf(part);
  return stagesOf(part, 'mitre-end').map(({ settings }) => {
    const from = (value: string) => (settings.fromEnd === 'top' ? length - drawn(value) : drawn(value));
    return { line: from(settings.shoulderLine), sight: from(settings.sightEdge) };
  });
}

/** The lengths whose bead is gone, from the bottom end: between each end and the miter next to it, and between the two of a mid rail. */
function strippedOf(part: PlanPart): (readonly [number, number])[] {
  const { length } = profileOf(part);
  const lines = [0, ...mitresOf(part).map(({ line }) => line), length].toSorted((a, b) => a - b);
  return lines.flatMap((from, k) => {
    const to = lines[k + 1];
    return k % 2 === 0 && to !== undefined ? [[from, to] as const] : [];
  });
}

/** A rail as it lies in the door, its miters to be pared. */
function railToPare(part: PlanPart): Shape[] {
  const { length, width, bead } = profileOf(part);
  const shoulder = shoulderOf(part);
  const mitres = sightEdges(part).flatMap((edge) => {
    const [sight, line] = edge === 'above' ? [width, width - bead] : [0, bead];
    return [
      stroke(at(shoulder, line), at(shoulder + bead, sight)),
      stroke(at(length - shoulder, line), at(length - shoulder - bead, sight)),
    ];
  });
  return [...railFront(part), ...mitres.map((path) => area(path, 'pare-mitre', 'none', 'cut'))];
}

/** A miter, so large, its shoulder line at the left, under a point: pared with the chisel flat on a block that carries the miter on. */
function atTheMiter(x: number, top: number, large: number, along: boolean): Shape[] {
  const [high, deep, skin] = [large * 0.34, large * 0.42, large * 0.08];
  const sight = top - high;
  const line = sight - deep;
  const wide = large * 1.6;
  const on = (share: number, off = 0): Point =>
    at(x - deep * (1 - share) - off * Math.SQRT1_2, line + deep * share + off * Math.SQRT1_2);
  const wood: Path = polygon([
    at(x - large, line - large * 0.3),
    at(x + wide, line - large * 0.3),
    at(x + wide, sight),
    at(x, sight),
    on(0),
    at(x - large, line),
  ]);
  const miter = [on(0), on(0.5), on(0.5, skin), on(0, skin)];
  return [
    area(wood, 'large-wood', 'wood'),
    area(polygon(miter), 'waste', 'waste', 'none'),
    ...(along
      ? [area(rectangle(x - large, line, x - deep - skin, line + skin), 'waste', 'waste', 'none')]
      : []),
    area(
      polygon([at(x, sight), at(x + high, top), at(x + wide * 0.94, top), at(x + wide * 0.94, sight)]),
      'guide-block',
      'tool',
    ),
    area(polygon([on(0.5), on(2.3), on(2.3, large * 0.1), on(0.72, large * 0.1)]), 'chisel', 'tool'),
    area(
      {
        start: at(along ? x - large : x - deep, line),
        runs: [
          { kind: 'line', to: on(0) },
          { kind: 'line', to: at(x, sight) },
        ],
        open: true,
      },
      'large-line',
      'none',
      'cut',
    ),
    label(
      say('drawing.guide-block'),
      at(x + (high * 0.7 + wide * 0.94) / 2, sight + high / 2),
      'guide-name',
      'small',
      'middle',
      high,
      {
        across: wide * 0.92 - high,
      },
    ),
    label(
      say('drawing.to-the-line'),
      at(x - large * 0.97, line + skin + large * 0.14),
      'line-name',
      'small',
      'start',
      Infinity,
      {
        across: large * 0.62,
      },
    ),
  ];
}
