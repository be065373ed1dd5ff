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
import { bodyOf } from './paper-size.ts';
import { wrapLines } from './text-lines.ts';

/** Height of each of the two sections: through stile and panel, through stile and tenon. */
const SECTION = 96;

/** What the drawings and the sizes beside them need at least. */
export const DRAWN = 320;

/** The upper part of the first page: door, sections and sizes, as high as what stands below leaves them. */
export function drawings(page: PaperPage, door: PlanDoor, units: Units, below: number): void {
  const body = bodyOf(page.size);
  const top = body.y + body.height;
  const height = top - below;
  const wide = body.width * 0.6;
  drawDoor(page, door, units, { x: body.x, y: top - height, width: wide, height });
  besideDoor(page, door, units, { x: body.x + wide + 16, y: top - 12, width: body.width - wide - 16 });
}

/** The head of the card names the door; in a low opening its name would stand over the rails. */
function drawDoor({ stream }: PaperPage, door: PlanDoor, units: Units, { x, y, width, height }: Box): void {
  const view = doorView(door, units);
  const shapes = view.shapes.filter((shape) => shape.kind !== 'label' || shape.role !== 'door-name');
  stream.figure(layOut({ ...view, shapes }, { width, height, text: 9 }), { x, y, weight: 0.5 });
}

/** The sections and under them the door's sizes, from a height down. */
function besideDoor(page: PaperPage, door: PlanDoor, units: Units, column: Omit<Box, 'height'>): void {
  const { x, width } = column;
  let { y } = column;
  const write = (text: string, bold = false) => {
    for (const line of wrapLines(text, page.faces[bold ? 'bold' : 'regular'], 9, width)) {
      page.stream.text(line, x, y, 9, bold ? 'bold' : 'regular');
      y -= 11.5;
    }
  };
  const sections = jointSections(door, units);
  if (sections.length > 0) write(say('paper.section'), true);
  for (const section of sections) {
    const figure = layOut(section, { width, height: SECTION, text: 8.5 });
    page.stream.figure(figure, { x, y: y + 8 - SECTION, weight: 0.5 });
    y -= SECTION + 6;
  }
  write(say('paper.finished'), true);
  for (const line of sizeLines(door, units)) write(line);
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
