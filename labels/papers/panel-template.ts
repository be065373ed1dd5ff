import { panelOutline } from '#core/views/panel-outline.ts';
import { drawn } from '#core/views/drawn.ts';
import { stageOf } from '#core/plan/stage-of.ts';
import { area, at, stroke } from '#core/drawing/shapes.ts';
import type { Plan } from '#core/plan/plan.ts';
import type { SettingsOf } from '#core/stages/table.ts';
import { say } from '#core/words/say.ts';
import { type Alike, alike, cutKey } from './alike.ts';
import { type FullSize, type FullSizeDraft, trueSize } from './full-size.ts';
import { someOf } from './text-lines.ts';
import { withUnit } from '../pdf/value-on-paper.ts';

/** A full-size template of every different arched panel: its whole outline, springings, centre line and pivot. */
export function panelTemplates(plan: Plan): FullSizeDraft[] {
  return alike(plan, (part) =>
    stageOf(part, 'cutout') === undefined ? null : cutKey(part, ['cutout']),
  ).flatMap((group) => {
    const cutout = stageOf(group.part, 'cutout')?.settings;
    return cutout === undefined ? [] : [() => template(group, cutout, plan)];
  });
}

function template({ part, doors }: Alike, cutout: SettingsOf<'cutout'>, { units }: Plan): FullSize {
  const [width, height] = [drawn(part.width), drawn(part.length)];
  const [side, flat, centre] = [drawn(cutout.sideHeight), drawn(cutout.flat), drawn(cutout.centre)];
  const { figure, size, place } = trueSize(
    {
      title: say('paper.template-panel'),
      units,
      shapes: [
        area(panelOutline(part), 'outline', 'none'),
        area(
          stroke(at(centre, side - drawn(cutout.pivot)), at(centre, height)),
          'centre-line',
          'none',
          'centre',
        ),
        area(stroke(at(flat, side), at(width - flat, side)), 'flats', 'none', 'hidden'),
      ],
    },
    units,
  );
  const value = (name: keyof SettingsOf<'cutout'>) => withUnit(cutout[name], units);
  return {
    title: say('paper.template-panel'),
    doors,
    lines: [
      say('paper.for-doors', { doors: someOf(doors, 40, (count) => say('paper.and-more', { count })) }),
      say('paper.template-panel-size', {
        width: value('width'),
        height: value('height'),
        sideHeight: value('sideHeight'),
        radius: value('radius'),
        chord: value('chord'),
        flat: value('flat'),
      }),
    ],
    use: [say('paper.template-panel-use')],
    size,
    figure,
    notes: [
      { at: place(at(centre, height - (height - side) * 0.4)), text: say('paper.centre-line') },
      {
        at: place(at(flat, side)),
        text: say('paper.flats-line', { value: value('sideHeight') }),
        below: 8,
      },
    ],
    pivot: {
      at: place(at(centre, side - drawn(cutout.pivot))),
      text: say('paper.pivot-mark', { radius: value('radius') }),
      where: say('paper.pivot-panel', { pivot: value('pivot'), radius: value('radius') }),
    },
  };
}
