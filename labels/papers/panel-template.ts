import { panelOutline } from '#core/views/panel-outline.ts';
import { drawn } from '#core/views/drawn.ts';
import { stageOf } from '#core/plan/stage-of.ts';
import { area, at, stroke } from '#core/drawing/shapes.ts';
import type { Area, Point } from '#core/drawing/model.ts';
import type { Plan, PlanPart } from '#core/plan/plan.ts';
import type { SettingsOf } from '#core/stages/table.ts';
import { say } from '#core/words/say.ts';
import { type Alike, alike, cutKey } from './alike.ts';
import { forDoors } from './for-doors.ts';
import { type FullSize, type FullSizeDraft, type Note, trueSize } from './full-size.ts';
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
  const lines = linesOf(part, cutout);
  const shapes = [area(panelOutline(part), 'outline', 'none'), ...shapesOf(lines)];
  const title = say('paper.template-panel');
  const { figure, size, place } = trueSize({ title, units, shapes }, units);
  const value = (name: keyof SettingsOf<'cutout'>) => withUnit(cutout[name], units);
  return {
    title,
    doors,
    lines: [
      forDoors(doors),
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
    notes: notesOf(lines, value('sideHeight'), place),
    pivot: {
      at: place(lines.pivot),
      text: say('paper.pivot-mark', { radius: value('radius') }),
      where: say('paper.pivot-panel', { pivot: value('pivot'), radius: value('radius') }),
    },
  };
}

/** What is drawn on a panel's template, from its lower left corner. */
interface PanelLines {
  readonly width: number;
  readonly height: number;
  /** Height of the flats, and how long each is. */
  readonly side: number;
  readonly flat: number;
  readonly pivot: Point;
}

function linesOf(part: PlanPart, cutout: SettingsOf<'cutout'>): PanelLines {
  const side = drawn(cutout.sideHeight);
  return {
    width: drawn(part.width),
    height: drawn(part.length),
    side,
    flat: drawn(cutout.flat),
    pivot: at(drawn(cutout.centre), side - drawn(cutout.pivot)),
  };
}

/** The centre line from the pivot to the crown, and the flats. */
function shapesOf({ width, height, side, flat, pivot }: PanelLines): Area[] {
  return [
    area(stroke(pivot, at(pivot.x, height)), 'centre-line', 'none', 'centre'),
    area(stroke(at(flat, side), at(width - flat, side)), 'flats', 'none', 'hidden'),
  ];
}

function notesOf(
  { height, side, flat, pivot }: PanelLines,
  sideHeight: string,
  place: (point: Point) => Point,
): Note[] {
  return [
    { at: place(at(pivot.x, height - (height - side) * 0.4)), text: say('paper.centre-line') },
    { at: place(at(flat, side)), text: say('paper.flats-line', { value: sideHeight }), below: 8 },
  ];
}
