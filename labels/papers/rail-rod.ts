import { railOutline, shoulderOf } from '#core/views/rail-blank.ts';
import { drawn } from '#core/views/drawn.ts';
import { profileOf } from '#core/views/profile.ts';
import { stageOf } from '#core/plan/stage-of.ts';
import { area, at, polygon, rectangle } from '#core/drawing/shapes.ts';
import type { Area, Path } from '#core/drawing/model.ts';
import { readPart } from '#core/plan/part-name.ts';
import type { Plan, PlanPart } from '#core/plan/plan.ts';
import { partName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import { type Alike, alike, cutKey } from './alike.ts';
import type { FullSize, FullSizeDraft } from './full-size.ts';
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
  const { length, width } = profileOf(part);
  const value = (text: string) => withUnit(text, units);
  const across: RodLine[] = [
    { at: 0, text: say('paper.rod-rail-end') },
    { at: length, text: say('paper.rod-rail-far', { length: value(part.length) }) },
  ];
  const both = (
    setting: string,
    key: 'paper.rod-shoulder' | 'paper.rod-mitre' | 'paper.rod-springing' | 'paper.rod-outer-stop',
  ) => {
    for (const where of [drawn(setting), length - drawn(setting)])
      across.push({ at: where, text: say(key, { value: value(setting) }) });
  };
  const shoulder = stageOf(part, 'shoulder')?.settings.stop;
  const tenon = stageOf(part, 'tenon')?.settings;
  const mitre = stageOf(part, 'mitre')?.settings.sightEdge;
  const arch = stageOf(part, 'arch')?.settings;
  if (shoulder !== undefined) both(shoulder, 'paper.rod-shoulder');
  if (mitre !== undefined) both(mitre, 'paper.rod-mitre');
  if (tenon?.outerStop !== undefined && drawn(tenon.outerStop) !== shoulderOf(part))
    both(tenon.outerStop, 'paper.rod-outer-stop');
  if (arch !== undefined) {
    both(arch.springing, 'paper.rod-springing');
    across.push({ at: drawn(arch.centre), text: say('paper.rod-centre', { value: value(arch.centre) }) });
  }
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
    length,
    width,
    outline: turned(railOutline(part), part),
    shapes: [...tenonShapes(part), ...mitreShapes(part)],
    across,
    words: 190,
  });
}

/** A rail stood on end, its sight edge to the right: a quarter turn, so that an arch keeps its hand. */
function turned(path: Path, part: PlanPart): Path {
  const { width } = profileOf(part);
  const turn = ({ x, y }: { readonly x: number; readonly y: number }) => at(width - y, x);
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

/** The tenons at both ends as they stay: their edges between the setbacks, the haunch beside them. */
function tenonShapes(part: PlanPart): Area[] {
  const { length, width } = profileOf(part);
  const tenon = stageOf(part, 'tenon')?.settings;
  if (tenon === undefined) return [];
  const stop = shoulderOf(part);
  const kept = tenon.outerStop === undefined ? stop : drawn(tenon.outerStop);
  const inner = width - drawn(tenon.innerHeight);
  const outer = tenon.outerHeight === undefined ? drawn(tenon.innerHeight) : drawn(tenon.outerHeight);
  const ends = [
    [0, stop, kept],
    [length, length - stop, length - kept],
  ] as const;
  return ends.flatMap(([end, shoulder, haunch]) => [
    area(
      rectangle(outer, Math.min(end, shoulder), inner, Math.max(end, shoulder)),
      'tenon',
      'none',
      'hidden',
    ),
    ...(haunch === shoulder
      ? []
      : [
          area(
            rectangle(0, Math.min(haunch, shoulder), outer, Math.max(haunch, shoulder)),
            'haunch',
            'none',
            'hidden',
          ),
        ]),
  ]);
}

/** The mitred ends of the bead: from the sight edge out to the shoulder line. */
function mitreShapes(part: PlanPart): Area[] {
  const { length, width } = profileOf(part);
  const mitre = stageOf(part, 'mitre')?.settings;
  if (mitre === undefined) return [];
  const [edge, line, height] = [drawn(mitre.sightEdge), drawn(mitre.shoulderLine), drawn(mitre.height)];
  const edges =
    readPart(part).at === 'mid'
      ? [
          [width, width - height],
          [0, height],
        ]
      : [[width, width - height]];
  return edges.flatMap(([out = 0, inward = 0]) =>
    [
      [edge, line],
      [length - edge, length - line],
    ].map(([sight = 0, shoulder = 0]) =>
      area(polygon([at(out, sight), at(inward, shoulder), at(out, shoulder)]), 'mitre', 'none', 'edge'),
    ),
  );
}
