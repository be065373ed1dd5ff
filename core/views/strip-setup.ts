import { placeEnd, type PlaceName } from '../plan/place-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { placeOf } from '../plan/stage-of.ts';
import { say } from '../words/say.ts';
import type { Path, Point, Shape } from '../drawing/model.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { area, at, dimension, label, polygon, rectangle, stroke, symbol } from '../drawing/shapes.ts';
import { faceSeen } from '../plan/face-seen.ts';
import { ghostAt, type Sets } from './sets.ts';
import { bladeAbove, uncutSide } from './strip-blade.ts';
import { member, stileBlank, type StileLie } from './stile-blank.ts';

/** How far the finished line and its mark are drawn from the cut at least, in widths of the stile. */
const APART = 0.04;

/**
 * The stopped rip where it stops, twice over each other at one scale: from the side, as one sees it from the blade's
 * side of the fence, and from above. The leading end is at x = 0, so that the line on the fence and the blade's front at
 * table level stand where the run is set; the mark on the stile, where its finished line is, is just short of them.
 */
export function stripSetup(
  part: PlanPart,
  stage: StageOf<'strip'>,
  place: PlaceName | undefined,
  sets: Sets,
): Shape[] {
  const chosen = placeOf(stage, place);
  if (chosen === undefined) return [];
  const { width, length } = profileOf(part);
  const { at: stopsAt, line: runLine } = sets('run', chosen.settings.run);
  const { at: fence, line: fenceLine } = sets('fence', stage.settings.fence);
  const [run, sawn] = [drawn(stopsAt), width - drawn(fence)];
  const leftEnd = placeEnd(chosen.at);
  const { reach = '0' } = stage.settings;
  const rip: Rip = {
    run,
    sawn,
    mark: runLine === null ? run : ghostAt(run, drawn(runLine), width * APART),
    finished: fenceLine === null ? sawn : ghostAt(sawn, width - drawn(fenceLine), width * APART),
    fence,
    end: Math.min(length, run + width * 1.6),
    left: Math.min(-width * 0.95, run - drawn(reach) - width * 0.25),
    lie: { leftEnd, above: 'outer', upTo: run + width * 1.6 },
    place: chosen.at,
  };
  return [
    ...fromAbove(part, stage, rip),
    ...fromSide(part, stage, rip, width * 1.9),
    dimension('run', stopsAt, at(0, 0), at(run, 0), 'below', 1, {
      place: chosen.at,
      datum: true,
    }),
  ];
}

interface Rip {
  /** From the leading end to the blade's front at table level, where the rip stops; and from the sight edge to where it is sawn. */
  readonly run: number;
  readonly sawn: number;
  /** Where the finished lines are drawn: the mark on the stile, and what is pared to. */
  readonly mark: number;
  readonly finished: number;
  /** From the fence to the blade, as it is set. */
  readonly fence: string;
  /** How far the stile is drawn. */
  readonly end: number;
  /** How far the fence, the table and the blade are drawn beyond the leading end. */
  readonly left: number;
  readonly lie: StileLie;
  readonly place: PlaceName;
}

/** From above: outer edge along the fence; the strip, of which the last stretch is still uncut on this face. */
function fromAbove(part: PlanPart, stage: StageOf<'strip'>, rip: Rip): Shape[] {
  const { run, sawn, mark, finished, fence, end, left, lie, place } = rip;
  const { width } = profileOf(part);
  const lag = stage.settings.lag === undefined ? 0 : drawn(stage.settings.lag);
  const open = Math.max(0, run - lag);
  return [
    area(rectangle(left, width, end, width * 1.25), 'fence', 'tool'),
    label(say('drawing.fence'), at((left + run) / 2, width * 1.125), 'fence-name', 'small'),
    ...stileBlank(part, lie),
    ...stop(at(0, width * 0.35), width * 0.65, width),
    label(say('drawing.stop'), at(-width * 0.36, width * 0.65), 'stop-name', 'small', 'end'),
    area(rectangle(0, 0, open, sawn), 'strip', 'waste', 'cut', place),
    area(rectangle(open, 0, run, sawn), 'uncut', 'paper', 'cut', place),
    ...finishedStrip(rip, width),
    area(stroke(at(mark, finished), at(mark, width)), 'mark', 'none', mark === run ? 'edge' : 'ghost'),
    area(stroke(at(run, width), at(run, width * 1.25)), 'fence-line', 'none', 'edge'),
    symbol('arrow-left', at(run + width * 0.2, width * 0.22), 'feed'),
    label(say('drawing.feed'), at(run + width * 0.34, width * 0.22), 'feed-name', 'small', 'start'),
    label(
      say(`drawing.${faceSeen(part, lie)}-up`),
      at(end - width * 0.12, width * 0.6),
      'face',
      'normal',
      'end',
      width * 0.3,
    ),
    ...(stage.settings.lag !== undefined && lag > 0
      ? [dimension('lag', stage.settings.lag, at(run, 0), at(open, 0), 'below', 2, { datum: true })]
      : []),
    dimension('fence', fence, at(end, width), at(end, sawn), 'right', 1, { datum: true }),
  ];
}

/** What the chisel pares to round the stretch that is ripped, and its name below. */
function finishedStrip({ mark, finished, sawn, run }: Rip, width: number): Shape[] {
  if (mark === run && finished === sawn) return [];
  const foot = -width * 0.13;
  const corners = [at(mark, finished), at(mark, foot)].map((to) => ({ kind: 'line', to }) as const);
  return [
    area({ start: at(0, finished), runs: corners, open: true }, 'finished-line', 'none', 'ghost'),
    label(say('drawing.finished-line'), at(mark + width * 0.06, foot), 'line-name', 'small', 'start'),
  ];
}

/** From the side: the stile on the table, the fence behind it, the blade raised, and what it leaves uncut. */
function fromSide(part: PlanPart, stage: StageOf<'strip'>, rip: Rip, table: number): Shape[] {
  const { run, mark, end, left } = rip;
  const { width, length, thickness } = profileOf(part);
  const { bladeHeight, reach: along, lag } = stage.settings;
  if (bladeHeight === undefined || along === undefined || lag === undefined) return [];
  const [rise, reach] = [drawn(bladeHeight), drawn(along)];
  if (rise <= 0 || reach <= 0) return [];
  const top = table + thickness;
  const fence = table + Math.max(rise, thickness) + width * 0.5;
  const arbor = run - reach;
  // The blade's radius, since reach² = 2·radius·rise − rise².
  const radius = (reach * reach + rise * rise) / (2 * rise);
  const rim = { centre: at(arbor, table + rise - radius), radius };
  return [
    area(rectangle(left, table - width * 0.2, end, table), 'table', 'tool'),
    label(
      say('drawing.table'),
      at(end - width * 0.08, table - width * 0.1),
      'table-name',
      'small',
      'end',
      width * 0.2,
    ),
    area(rectangle(left, table, end, fence), 'fence', 'tool', 'fine'),
    area(bladeAbove(rim, left, table, run), 'blade', 'section', 'fine'),
    area(lifted(member(0, end, thickness, { left: false, right: end < length }), table), 'side', 'wood'),
    ...stop(at(0, table), thickness, width),
    area(bladeAbove(rim, left, table, run), 'blade', 'none', 'hidden'),
    label(say('drawing.blade'), at(run - reach * 0.5, table + thickness * 0.27), 'blade-name', 'small'),
    area(uncutSide(rim, run, table, top, drawn(lag)), 'uncut', 'waste', 'cut'),
    area(stroke(at(arbor, table - width * 0.25), at(arbor, fence)), 'arbor', 'none', 'centre'),
    label(say('drawing.arbor'), at(arbor, table - width * 0.37), 'arbor-name', 'small'),
    area(stroke(at(run, top), at(run, fence)), 'fence-line', 'none', 'edge'),
    area(stroke(at(mark, table), at(mark, top)), 'mark', 'none', mark === run ? 'edge' : 'ghost'),
    label(
      say('drawing.line-on-fence'),
      at(run + width * 0.08, fence - width * 0.14),
      'line-name',
      'small',
      'start',
    ),
    label(
      say('drawing.mark'),
      at(run + width * 0.08, table + thickness * 0.5),
      'mark-name',
      'small',
      'start',
    ),
    dimension('reach', along, at(arbor, table), at(run, table), 'above', 1, {
      datum: true,
    }),
    dimension('bladeHeight', bladeHeight, at(end, table), at(arbor, table + rise), 'right', 1, {
      datum: true,
    }),
  ];
}

/** The stop that the leading end comes against. */
function stop(corner: Point, high: number, width: number): Shape[] {
  return [area(rectangle(corner.x - width * 0.3, corner.y, corner.x, corner.y + high), 'stop', 'tool')];
}

function lifted(path: Path, by: number): Path {
  return polygon([path.start, ...path.runs.map(({ to }) => to)].map(({ x, y }) => at(x, y + by)));
}
