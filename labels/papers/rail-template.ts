import { railOutline } from '#core/views/rail-blank.ts';
import { drawn } from '#core/views/drawn.ts';
import { profileOf } from '#core/views/profile.ts';
import { stageOf } from '#core/plan/stage-of.ts';
import { area, at, stroke } from '#core/drawing/shapes.ts';
import type { Plan } from '#core/plan/plan.ts';
import type { SettingsOf } from '#core/stages/table.ts';
import { partName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import { type Alike, alike, cutKey } from './alike.ts';
import { type FullSize, type FullSizeDraft, trueSize } from './full-size.ts';
import { someOf } from './text-lines.ts';
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
  const { length, width } = profileOf(part);
  const [springing, rise, centre] = [drawn(arch.springing), drawn(arch.rise), drawn(arch.centre)];
  const shoulder = drawn(stop);
  const { figure, size, place } = trueSize(
    {
      title: partName(part.part),
      units,
      shapes: [
        area(railOutline(part), 'outline', 'none'),
        area(stroke(at(centre, rise), at(centre, width)), 'centre-line', 'none', 'centre'),
        ...[springing, length - springing].map((x) =>
          area(stroke(at(x, 0), at(x, Math.min(width, rise))), 'springing', 'none', 'hidden'),
        ),
        ...[shoulder, length - shoulder].map((x) =>
          area(stroke(at(x, 0), at(x, width)), 'shoulder', 'none', 'hidden'),
        ),
      ],
    },
    units,
  );
  const value = (name: keyof SettingsOf<'arch'>) => withUnit(arch[name], units);
  return {
    title: say('paper.template-rail'),
    doors,
    lines: [
      say('paper.for-doors', { doors: someOf(doors, 40, (count) => say('paper.and-more', { count })) }),
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
    notes: [
      { at: place(at(centre, rise + (width - rise) * 0.55)), text: say('paper.centre-line') },
      {
        at: place(at(springing, Math.min(width, rise) * 0.7)),
        text: say('paper.springing', { value: value('springing') }),
      },
      { at: place(at(length - springing, Math.min(width, rise) * 0.7)), text: say('paper.springing-right') },
      {
        at: place(at(shoulder, width * 0.9)),
        text: say('paper.shoulder-line', { value: withUnit(stop, units) }),
      },
    ],
    pivot: {
      at: place(at(centre, -drawn(arch.pivot))),
      text: say('paper.pivot-mark', { radius: value('radius') }),
      where: say('paper.pivot-rail', { pivot: value('pivot'), radius: value('radius') }),
    },
  };
}
