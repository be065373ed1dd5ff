import type { PlanPart, PlanStage, Settings } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import type { Shape } from './model.ts';
import { drawn, profileOf } from './plan-number.ts';
import { area, at, dimension, label, polygon, rectangle, stroke, symbol } from './shapes.ts';
import { faceSeen, stileBlank, type StileLie } from './stile-blank.ts';

/** A stop block against the end at x = 0. */
export function stopBlock(width: number): Shape[] {
  const thick = width * 0.22;
  return [
    area(rectangle(-thick, -width * 0.12, 0, width * 0.72), 'stop', 'tool'),
    label(say('drawing.stop'), at(-thick / 2, width * 0.86), 'stop-name', 'small'),
  ];
}

/** Which face one sees, written on the blank. */
function faceNote(part: PlanPart, lie: StileLie, x: number): Shape[] {
  const { width } = profileOf(part);
  const face = faceSeen(part, lie);
  return [
    label(
      say(`drawing.${face}-toward-you`),
      at(x, width * (lie.above === 'bead' ? 0.14 : 0.5)),
      'face',
      'normal',
      'end',
      width * 0.3,
    ),
  ];
}

/** At the mortiser: outer edge down, bead edge up under the chisel, one place at a time; its own end against the stop. */
export function mortiseSetup(part: PlanPart, stage: PlanStage, place: string | undefined): Shape[] {
  const chosen = (stage.places ?? []).find(({ at: name }) => name === place) ?? stage.places?.[0];
  if (chosen === undefined) return [];
  const { width, length } = profileOf(part);
  const leftEnd = chosen.at === 'top' ? 'top' : 'bottom';
  const [start, stop, depth] = [
    drawn(chosen.settings.start),
    drawn(chosen.settings.stop),
    drawn(stage.settings.depthFromEdge),
  ];
  const lie: StileLie = { leftEnd, above: 'bead', upTo: reachOf(stop, width, length) };
  const bottom = width - depth;
  const groove = width - drawn(stage.settings.depthFromEdge) + drawn(stage.settings.depthFromGroove);
  const chisel = drawn(stage.settings.chisel);
  return [
    ...stileBlank(part, lie, chosen.at),
    ...stopBlock(width),
    ...(chisel > 0
      ? [area(rectangle(start, width + width * 0.08, start + chisel, width + width * 0.5), 'chisel', 'tool')]
      : []),
    ...faceNote(part, lie, (lie.upTo ?? length) * 0.95),
    ...dimension('start', chosen.settings.start, at(0, width), at(start, width), 'above', 1, {
      place: chosen.at,
      datum: true,
    }),
    ...dimension('stop', chosen.settings.stop, at(0, width), at(stop, width), 'above', 2, {
      place: chosen.at,
      datum: true,
    }),
    ...dimension('length', chosen.settings.length, at(start, 0), at(stop, 0), 'below', 1, {
      place: chosen.at,
    }),
    ...dimension(
      'depthFromEdge',
      stage.settings.depthFromEdge,
      at(lie.upTo ?? length, width),
      at(lie.upTo ?? length, bottom),
      'right',
      1,
      { datum: true },
    ),
    ...dimension(
      'depthFromGroove',
      stage.settings.depthFromGroove,
      at(lie.upTo ?? length, groove),
      at(lie.upTo ?? length, bottom),
      'right',
      2,
      { datum: true },
    ),
  ];
}

/** How much of the length is drawn: what the setting needs and a little more; the whole when that is most of it. */
function reachOf(needed: number, width: number, length: number): number {
  const wanted = needed + Math.max(width * 1.6, needed * 0.35);
  return wanted > length * 0.8 ? length : wanted;
}

/** A mitre on the table saw: that end against the stop, sight edge down, the blade leaning toward the stop. */
export function mitreSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const { width, length, bead } = profileOf(part);
  const leftEnd = stage.settings.fromEnd === 'top' ? 'top' : 'bottom';
  const [sight, shoulder] = [drawn(stage.settings.sightEdge), drawn(stage.settings.shoulderLine)];
  const lie: StileLie = { leftEnd, above: 'outer', upTo: reachOf(sight, width, length) };
  return [
    ...stileBlank(part, lie),
    ...stopBlock(width),
    area(polygon([at(0, 0), at(sight, 0), at(shoulder, bead), at(0, bead)]), 'bead-waste', 'none', 'hidden'),
    area(blade(sight, shoulder, bead), 'blade', 'tool', 'fine'),
    area(stroke(at(sight, 0), at(shoulder, bead)), 'mitre', 'none', 'cut'),
    ...faceNote(part, lie, (lie.upTo ?? length) * 0.95),
    ...dimension('shoulderLine', stage.settings.shoulderLine, at(0, width), at(shoulder, bead), 'above', 1, {
      datum: true,
    }),
    ...dimension('sightEdge', stage.settings.sightEdge, at(0, 0), at(sight, 0), 'below', 2, { datum: true }),
    ...dimension(
      'height',
      stage.settings.height,
      at(lie.upTo ?? length, 0),
      at(lie.upTo ?? length, bead),
      'right',
      1,
      { datum: true },
    ),
  ];
}

/** The tilted blade below the table, leaning toward the stop at the left. */
function blade(sight: number, shoulder: number, bead: number) {
  const kerf = bead * 0.5;
  return polygon([
    at(sight, 0),
    at(shoulder, bead),
    at(shoulder - kerf, bead),
    at(sight - kerf + bead, -bead),
    at(sight + bead, -bead),
  ]);
}

/** The notch between the mitres of a mid rail: crosscuts side by side, sight edge down. */
export function notchSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const { width, length, bead } = profileOf(part);
  const [from, to] = [drawn(stage.settings.from), drawn(stage.settings.to)];
  const lie: StileLie = { leftEnd: 'bottom', above: 'outer', upTo: reachOf(to, width, length) };
  return [
    ...stileBlank(part, lie),
    ...stopBlock(width),
    area(rectangle(from, 0, to, bead), 'notch', 'waste', 'cut'),
    ...faceNote(part, lie, (lie.upTo ?? length) * 0.95),
    ...dimension('from', stage.settings.from, at(0, 0), at(from, 0), 'below', 1, { datum: true }),
    ...dimension('to', stage.settings.to, at(0, 0), at(to, 0), 'below', 2, { datum: true }),
    ...dimension('length', stage.settings.length, at(from, width), at(to, width), 'above', 1),
    ...dimension(
      'height',
      stage.settings.height,
      at(lie.upTo ?? length, 0),
      at(lie.upTo ?? length, bead),
      'right',
      1,
      { datum: true },
    ),
  ];
}

/** The stopped rip seen from above: outer edge along the fence, this end leading; the strip comes off up to the shoulder line. */
export function stripSetup(part: PlanPart, stage: PlanStage, place: string | undefined): Shape[] {
  const chosen = (stage.places ?? []).find(({ at: name }) => name === place) ?? stage.places?.[0];
  if (chosen === undefined) return [];
  const { width, length, bead } = profileOf(part);
  const run = drawn(chosen.settings.run);
  const lag = drawn(stage.settings.lag);
  const leftEnd = chosen.at === 'top' ? 'top' : 'bottom';
  const lie: StileLie = { leftEnd, above: 'outer', upTo: reachOf(run, width, length) };
  const end = lie.upTo ?? length;
  const face = faceSeen(part, lie);
  return [
    ...stileBlank(part, lie),
    area(rectangle(-width * 0.5, width, end, width * 1.25), 'fence', 'tool'),
    label(say('drawing.fence'), at(end * 0.5, width * 1.125), 'fence-name', 'small'),
    area(rectangle(0, 0, run, bead), 'strip', 'waste', 'cut', chosen.at),
    symbol('arrow-left', at(-width * 0.3, width * 0.5), 'feed'),
    label(say('drawing.feed'), at(-width * 0.3, width * 0.75), 'feed-name', 'small'),
    label(say(`drawing.${face}-up`), at((run + end) / 2 + width * 0.1, width * 0.3), 'face', 'normal'),
    ...dimension('run', chosen.settings.run, at(0, 0), at(run, 0), 'below', 1, {
      place: chosen.at,
      datum: true,
    }),
    ...(lag > 0
      ? dimension('lag', stage.settings.lag, at(run, 0), at(Math.max(0, run - lag), 0), 'below', 2, {
          datum: true,
        })
      : []),
    ...dimension('fence', stage.settings.fence, at(end, width), at(end, bead), 'right', 1, { datum: true }),
  ];
}

/** Settings shown as text only in a view that has no place to dimension them. */
export function undrawn(settings: Settings, drawnNames: readonly string[]): string[] {
  return Object.keys(settings).filter((name) => !drawnNames.includes(name));
}
