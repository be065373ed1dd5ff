import { layOut } from '#core/drawing/layout.ts';
import type { Units } from '#core/length/units.ts';
import { eachSide } from '#core/plan/each-side.ts';
import type { PlanDoor } from '#core/plan/plan.ts';
import { trimOf } from '#core/plan/trim-of.ts';
import { doorView } from '#core/views/door-view.ts';
import { jointSections } from '#core/views/joint-sections.ts';
import { say } from '#core/words/say.ts';
import type { Box } from '../pdf/box.ts';
import { withUnit } from '../pdf/value-on-paper.ts';
import type { PaperPage } from './paper-page.ts';
import { wrapLines } from './text-lines.ts';

/** The greatest height of each of the two sections: through stile and panel, through stile and tenon. */
const SECTION = 92;
const TYPE = 8;
const PITCH = 10;

/** The head of the card names the door; in a low opening its name would stand over the rails. */
export function drawDoor({ stream }: PaperPage, door: PlanDoor, units: Units, box: Box): void {
  const view = doorView(door, units);
  const shapes = view.shapes.filter((shape) => shape.kind !== 'label' || shape.role !== 'door-name');
  const { x, y, width, height } = box;
  stream.figure(layOut({ ...view, shapes }, { width, height, text: 8.5 }), { x, y, weight: 0.5 });
}

/** The sections as high as the sizes leave them, and the door's sizes under them. */
export function drawSections(page: PaperPage, door: PlanDoor, units: Units, box: Box): void {
  const { x, width } = box;
  const lines = (text: string, bold: boolean) =>
    wrapLines(text, page.faces[bold ? 'bold' : 'regular'], TYPE, width).map((line) => ({ line, bold }));
  const sections = jointSections(door, units);
  const title = sections.length > 0 ? lines(say('paper.section'), true) : [];
  const sizes = [
    ...lines(say('paper.finished'), true),
    ...sizeLines(door, units).flatMap((line) => lines(line, false)),
  ];
  const room = box.height - (title.length + sizes.length) * PITCH - 8;
  const high = Math.min(SECTION, room / Math.max(1, sections.length) - 4);
  let y = box.y + box.height - 9;
  const write = (all: typeof title) => {
    for (const { line, bold } of all) {
      page.stream.text(line, x, y, TYPE, bold ? 'bold' : 'regular');
      y -= PITCH;
    }
  };
  write(title);
  for (const section of sections) {
    const figure = layOut(section, { width, height: high, text: 7.5 });
    page.stream.figure(figure, { x, y: y + 8 - high, weight: 0.5 });
    y -= high + 4;
  }
  write(sizes);
}

/** What comes off: each side and each end, or all four where their amounts differ. */
function trimLine(values: PlanDoor['values'], unit: (value: string) => string): string {
  const { left, right, bottom, top } = eachSide((side) => unit(trimOf(values)[side]));
  return left === right && bottom === top
    ? say('paper.trims', { side: left, end: bottom })
    : say('paper.trims-apart', { left, right, bottom, top });
}

function sizeLines({ values }: PlanDoor, units: Units): string[] {
  const unit = (value: string) => withUnit(value, units);
  return [
    `${unit(values.finishedWidth)} × ${unit(values.finishedHeight)}`,
    trimLine(values, unit),
    say('paper.sight', { width: unit(values.sightWidth), heights: values.sightHeights.map(unit).join(', ') }),
  ];
}
