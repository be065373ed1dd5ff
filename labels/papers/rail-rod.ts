import { railOutline, shoulderOf } from '#core/views/rail-blank.ts';
import { drawn } from '#core/views/drawn.ts';
import { profileOf } from '#core/views/profile.ts';
import { stageOf } from '#core/plan/stage-of.ts';
import { at } from '#core/drawing/shapes.ts';
import type { Path, Point } from '#core/drawing/model.ts';
import { readPart } from '#core/plan/part-name.ts';
import type { Plan, PlanPart } from '#core/plan/plan.ts';
import { partName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import { type Alike, alike, cutKey } from './alike.ts';
import type { FullSize, FullSizeDraft } from './full-size.ts';
import { mitreShapes, tenonShapes } from './rail-rod-shapes.ts';
import { type RodLine, rodSheets } from './rod.ts';
import { withUnit } from '../pdf/value-on-paper.ts';

/** A full-size rod of every different rail: ends, shoulders, mitres, tenons with their haunch, springings and centre. */
export function railRods(plan: Plan): FullSizeDraft[] {
  return alike(plan, (part) =>
    readPart(part).kind === 'rail'
      ? `${readPart(part).at === 'mid' ? 'mid' : 'outer'}${cutKey(part, CUTS)}`
      : null,
  ).map((group) => () => railRod(group, plan));
}

const CUTS = ['arch', 'shoulder', 'mitre', 'tenon'] as const;

function railRod({ part, doors, parts }: Alike, { units }: Plan): FullSize {
  const value = (text: string) => withUnit(text, units);
  const tenon = stageOf(part, 'tenon')?.settings;
  return rodSheets({
    title: say('paper.rod-of', { part: parts.map((each) => partName(each)).join(' + ') }),
    lines: [
      say('paper.rod-rail-size', {
        length: value(part.length),
        width: value(part.width),
        tenon: tenon === undefined ? '' : value(tenon.width),
      }),
    ],
    use: [say('paper.rod-rail-use')],
    doors,
    units,
    ...profileOf(part),
    outline: turned(railOutline(part), part),
    shapes: [...tenonShapes(part), ...mitreShapes(part)],
    across: linesAcross(part, value),
    words: 190,
  });
}

/** The lines across a rail's rod: its ends, what stands alike at both of them, the arch's centre. */
function linesAcross(part: PlanPart, value: (text: string) => string): RodLine[] {
  const { length } = profileOf(part);
  const both = (setting: string | undefined, key: BothEnds): RodLine[] =>
    setting === undefined
      ? []
      : [drawn(setting), length - drawn(setting)].map((from) => ({
          at: from,
          text: say(key, { value: value(setting) }),
        }));
  const outerStop = stageOf(part, 'tenon')?.settings.outerStop;
  const haunched = outerStop !== undefined && drawn(outerStop) !== shoulderOf(part);
  const arch = stageOf(part, 'arch')?.settings;
  return [
    { at: 0, text: say('paper.rod-rail-end') },
    { at: length, text: say('paper.rod-rail-far', { length: value(part.length) }) },
    ...both(stageOf(part, 'shoulder')?.settings.stop, 'paper.rod-shoulder'),
    ...both(stageOf(part, 'mitre')?.settings.sightEdge, 'paper.rod-mitre'),
    ...both(haunched ? outerStop : undefined, 'paper.rod-outer-stop'),
    ...both(arch?.springing, 'paper.rod-springing'),
    ...(arch === undefined
      ? []
      : [{ at: drawn(arch.centre), text: say('paper.rod-centre', { value: value(arch.centre) }) }]),
  ];
}

type BothEnds = 'paper.rod-shoulder' | 'paper.rod-mitre' | 'paper.rod-springing' | 'paper.rod-outer-stop';

/** A rail stood on end, its sight edge to the right: a quarter turn, so that an arch keeps its hand. */
function turned(path: Path, part: PlanPart): Path {
  const { width } = profileOf(part);
  const turn = ({ x, y }: Point) => at(width - y, x);
  return {
    ...path,
    start: turn(path.start),
    runs: path.runs.map((run) =>
      run.kind === 'line'
        ? { kind: 'line', to: turn(run.to) }
        : { ...run, to: turn(run.to), centre: turn(run.centre) },
    ),
  };
}
