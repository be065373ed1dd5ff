import { railOutline } from '#core/views/rail-blank.ts';
import { drawn } from '#core/views/drawn.ts';
import { profileOf } from '#core/views/profile.ts';
import { stageOf } from '#core/plan/stage-of.ts';
import { area, at, stroke } from '#core/drawing/shapes.ts';
import type { Area, Point } from '#core/drawing/model.ts';
import type { Plan, PlanPart } from '#core/plan/plan.ts';
import type { SettingsOf } from '#core/stages/table.ts';
import { partName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import { type Alike, alike, cutKey } from './alike.ts';
import { forDoors } from './for-doors.ts';
import { type FullSize, type FullSizeDraft, type Note, trueSize } from './full-size.ts';
import { withUnit } from '../pdf/value-on-paper.ts';

/** A full-size template of every different arched rail: outline, arch, springings, centre line and shoulders. */
export function railTemplates(plan: Plan): FullSizeDraft[] {
  return alike(plan, (part) =>
    stageOf(part, 'arch') === undefined ? null : cutKey(part, ['arch', 'shoulder', 'mitre']),
  ).flatMap((group) => {
    const [arch, shoulder] = [stageOf(group.part, 'arch'), stageOf(group.part, 'shoulder')];
    return arch === undefined || shoulder === undefined
      ? []
      : [() => template(group, arch.settings, shoulder.settings.stop, plan)];
  });
}

function template({ part, doors }: Alike, arch: SettingsOf<'arch'>, stop: string, { units }: Plan): FullSize {
  const lines = linesOf(part, arch, stop);
  const shapes = [area(railOutline(part), 'outline', 'none'), ...shapesOf(lines)];
  const { figure, size, place } = trueSize({ title: partName(part.part), units, shapes }, units);
  const value = (name: keyof SettingsOf<'arch'>) => withUnit(arch[name], units);
  return {
    title: say('paper.template-rail'),
    doors,
    lines: [
      forDoors(doors),
      say('paper.template-rail-size', {
        length: withUnit(part.length, units),
        width: withUnit(part.width, units),
        rise: value('rise'),
        chord: value('chord'),
        radius: value('radius'),
        springing: value('springing'),
      }),
    ],
    use: [say('paper.template-rail-use')],
    size,
    figure,
    notes: notesOf(lines, { springing: value('springing'), stop: withUnit(stop, units) }, place),
    pivot: {
      at: place(at(lines.centre, -drawn(arch.pivot))),
      text: say('paper.pivot-mark', { radius: value('radius') }),
      where: say('paper.pivot-rail', { pivot: value('pivot'), radius: value('radius') }),
    },
  };
}

/** What is drawn on a rail's template: along it from its left end, across it from its sight edge. */
interface RailLines {
  readonly length: number;
  readonly width: number;
  readonly springing: number;
  readonly centre: number;
  readonly rise: number;
  readonly shoulder: number;
}

function linesOf(part: PlanPart, arch: SettingsOf<'arch'>, stop: string): RailLines {
  return {
    ...profileOf(part),
    springing: drawn(arch.springing),
    centre: drawn(arch.centre),
    rise: drawn(arch.rise),
    shoulder: drawn(stop),
  };
}

/** Centre line, springings and shoulders. */
function shapesOf({ length, width, springing, centre, rise, shoulder }: RailLines): Area[] {
  const across = (x: number, from: number, to: number) => stroke(at(x, from), at(x, to));
  return [
    area(across(centre, rise, width), 'centre-line', 'none', 'centre'),
    ...[springing, length - springing].map((x) =>
      area(across(x, 0, Math.min(width, rise)), 'springing', 'none', 'hidden'),
    ),
    ...[shoulder, length - shoulder].map((x) => area(across(x, 0, width), 'shoulder', 'none', 'hidden')),
  ];
}

function notesOf(
  { length, width, springing, centre, rise, shoulder }: RailLines,
  values: { readonly springing: string; readonly stop: string },
  place: (point: Point) => Point,
): Note[] {
  const low = Math.min(width, rise) * 0.7;
  return [
    { at: place(at(centre, rise + (width - rise) * 0.55)), text: say('paper.centre-line') },
    { at: place(at(springing, low)), text: say('paper.springing', { value: values.springing }) },
    { at: place(at(length - springing, low)), text: say('paper.springing-right') },
    { at: place(at(shoulder, width * 0.9)), text: say('paper.shoulder-line', { value: values.stop }) },
  ];
}
