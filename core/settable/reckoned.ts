import { half, larger, type Length, less, over, sign, smaller, sum, times, ZERO } from '../length/length.ts';
import { readPart } from '../plan/part-name.ts';
import type { PlaceName } from '../plan/place-name.ts';
import type { PlanPart, PlanStage, Settings } from '../plan/plan.ts';
import { settingFacts } from '../plan/set-or-follows.ts';
import { isStageOf } from '../plan/stage-of.ts';
import { readStage } from '../stages/stage-id.ts';
import { asSet, betweenWalls, type TenonFaces, type Together } from './hangs-together.ts';
import { exactly, lengthOf } from './numbers.ts';
import { settableLength } from './to-step.ts';

/** Lengths by the names of settings. */
export type Lengths = Readonly<Record<string, Length>>;

/** What a stage of a part sets that hangs on numbers shown elsewhere: reckoned from those, not brought to its own side yet. */
export function reckoned(part: PlanPart, stage: PlanStage, together: Together): Lengths {
  const { bead, stop, step } = together;
  const exact = (name: string) => exactly(stage, name, step.units);
  const shown = (name: string, value: Length = exact(name)) =>
    settableLength(value, settingFacts(stage.stage, name) ?? {}, step);
  const size = () => together.size(part);
  switch (readStage(stage.stage)?.kind) {
    case 'mill':
      return { ...size() };
    case 'arch':
      return { centre: half(size().length) };
    case 'bead':
      return { fillet: less(shown('cutterHeight'), bead) };
    case 'groove':
      return { width: betweenWalls(part, step) };
    case 'mortise':
      return depths(stage, together);
    case 'pare':
      return { width: betweenWalls(part, step) };
    case 'mitre-end':
      return lower(part, stage, together);
    case 'notch':
      return { length: less(shown('to'), shown('from')) };
    case 'strip':
      return { fence: less(size().width, bead) };
    case 'shoulder':
      return { height: together.tenonFaces(part).height };
    case 'cheek':
      return cheeks(together.tenonFaces(part));
    case 'mitre':
      return { sightEdge: sum(stop, bead), shoulderLine: stop };
    case 'tenon':
      return {
        width:
          readPart(part).at === 'mid'
            ? less(size().width, times(shown('innerHeight'), 2))
            : less(size().width, shown('outerHeight'), shown('innerHeight')),
        outerStop: less(stop, together.haunch),
        innerStop: stop,
      };
    case 'haunch': {
      const { haunch } = together.tenonFaces(part);
      return haunch === null || sign(together.haunch) === 0 ? {} : { pareTo: haunch };
    }
    case 'cutout':
      return {
        width: size().width,
        height: size().length,
        radius: together.archFloor === null ? exact('radius') : smaller(exact('radius'), together.archFloor),
        centre: half(size().width),
      };
    case 'raise':
      return raised(size().thickness, together.tongue);
    default:
      return {};
  }
}

/** A tenon that would not enter its mortises is planed until it does. */
function cheeks({ height, thickness, plane }: TenonFaces): Lengths {
  return { height, thickness, ...(plane === null ? {} : { pareTo: plane }) };
}

/** What is left is the tongue, but never more than the panel: a groove that came out wide may take the whole of it. */
function raised(thickness: Length, groove: Length): Lengths {
  const tongue = smaller(groove, thickness);
  return { tongue, depth: less(thickness, tongue) };
}

/** Deep enough for the tenon as it is shown: where there is less clearance than that may be longer, by so much deeper. */
function depths(stage: PlanStage, { bead, stop, step }: Together): Lengths {
  const tenon = sum(bead, stop);
  const [edge, floor] = ['depthFromEdge', 'depthFromGroove'].map((name) =>
    exactly(stage, name, step.units),
  ) as [Length, Length];
  const groove = asSet('groove', 'depth', less(edge, floor), step);
  return { depthFromEdge: larger(edge, tenon), depthFromGroove: larger(floor, less(tenon, groove)) };
}

/** The lower mitre of a mid rail is measured from the top end of a stile as long as is shown; all others from where their line is. */
function lower(part: PlanPart, stage: PlanStage, { bead, size, step }: Together): Lengths {
  if (readStage(stage.stage)?.mid?.side !== 'lower') return {};
  const { units } = step;
  const below = less(lengthOf(part.length, units) ?? ZERO, exactly(stage, 'sightEdge', units));
  const sightEdge = settableLength(
    less(size(part).length, below),
    settingFacts(stage.stage, 'sightEdge') ?? {},
    step,
  );
  return { sightEdge, shoulderLine: less(sightEdge, bead) };
}

/** What a place of a stage sets that hangs on numbers shown elsewhere, and how many plunges its mortise takes. */
export function reckonedAt(
  stage: PlanStage,
  at: PlaceName,
  settings: Settings,
  together: Together,
): { readonly lengths: Lengths; readonly plunges?: number } {
  if (!isStageOf(stage, 'mortise')) return { lengths: {} };
  const { step } = together;
  const [start, stop] = [lengthOf(settings.start, step.units), lengthOf(settings.stop, step.units)];
  if (start === null || stop === null) return { lengths: {} };
  const tenon = together.tenon(at, { from: start, to: stop });
  const shown = (name: string, value: Length) =>
    settableLength(value, settingFacts('mortise', name) ?? {}, step);
  const [from, to] = [shown('start', smaller(start, tenon.from)), shown('stop', larger(stop, tenon.to))];
  const length = less(to, from);
  const chisel = lengthOf(stage.settings.chisel, step.units);
  return {
    lengths: { start: from, stop: to, length },
    ...(chisel === null ? {} : { plunges: over(length, chisel).ceil().valueOf() }),
  };
}
