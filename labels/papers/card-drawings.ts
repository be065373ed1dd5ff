import { layOut } from '#core/drawing/layout.ts';
import type { Units } from '#core/length/units.ts';
import { eachSide } from '#core/plan/each-side.ts';
import { partsOf } from '#core/plan/parts-of.ts';
import type { PlanDoor } from '#core/plan/plan.ts';
import { trimOf } from '#core/plan/trim-of.ts';
import { drawn } from '#core/views/drawn.ts';
import { doorView } from '#core/views/door-view.ts';
import { jointSections } from '#core/views/joint-sections.ts';
import { say } from '#core/words/say.ts';
import type { Box } from '../pdf/box.ts';
import type { Faces } from '../pdf/typeface.ts';
import { withUnit } from '../pdf/value-on-paper.ts';
import type { PaperPage } from './paper-page.ts';
import { wrapLines } from './text-lines.ts';

/** The greatest height of each of the two sections: through stile and panel, through stile and tenon. */
const SECTION = 92;
const TYPE = 8;
const PITCH = 10;

/** The sizes of rails and openings stand beside them so far apart, in points; above and below them is this much besides. */
const SIZE_APART = 14;
const AROUND = 70;
const HIGHEST = 330;
/** A door that has to be drawn higher than this has many sizes close together: its figures are smaller. */
const CROWDED = 240;

/** How high a door is drawn at least, so that the sizes of its rails and openings do not stand on each other. */
export function doorHeight(door: PlanDoor): number {
  const { rails } = partsOf(door);
  const openings = door.values.sightHeights.map(drawn);
  const members = [rails.bottom, ...rails.mids, rails.top].map(({ width }) => drawn(width));
  const all = members.flatMap((width, k) => [width, ...openings.slice(k, k + 1)]);
  const apart = all.slice(1).map((size, k) => (size + (all[k] ?? 0)) / 2);
  const whole = all.reduce((sum, size) => sum + size, 0);
  return Math.min(HIGHEST, AROUND + (SIZE_APART * whole) / Math.min(...apart));
}

/** The head of the card names the door; in a low opening its name would stand over the rails. */
export function drawDoor({ stream }: PaperPage, door: PlanDoor, units: Units, box: Box): void {
  const view = doorView(door, units);
  const shapes = view.shapes.filter((shape) => shape.kind !== 'label' || shape.role !== 'door-name');
  const { x, y, width, height } = box;
  stream.figure(
    layOut({ ...view, shapes }, { width, height, text: doorHeight(door) > CROWDED ? 6.7 : 8.5 }),
    { x, y, weight: 0.5 },
  );
}

/** The sections, one under the other, as high as a box lets them be; gives the height that they end at. */
export function drawSections(page: PaperPage, door: PlanDoor, units: Units, box: Box): number {
  const { x, width } = box;
  const sections = jointSections(door, units);
  const title = wrapLines(sections.length > 0 ? say('paper.section') : '', page.faces.bold, TYPE, width);
  let y = box.y + box.height - 9;
  for (const line of title) {
    page.stream.text(line, x, y, TYPE, 'bold');
    y -= PITCH;
  }
  const room = box.height - title.length * PITCH - 4;
  const high = Math.min(SECTION, room / Math.max(1, sections.length) - 4);
  for (const section of sections) {
    const figure = layOut(section, { width, height: high, text: 8.5 });
    page.stream.figure(figure, { x, y: y + 8 - high, weight: 0.5 });
    y -= high + 4;
  }
  return y + 9;
}

/** The lines of the door's sizes in a width. */
export function sizesIn(door: PlanDoor, units: Units, faces: Faces, width: number): readonly string[] {
  return sizeLines(door, units).flatMap((line) => wrapLines(line, faces.regular, TYPE, width));
}

/** How high the sizes stand. */
export function sizesHeight(lines: readonly string[]): number {
  return (lines.length + 1) * PITCH + 3;
}

/** The door's sizes from a height down. */
export function writeSizes({ stream }: PaperPage, lines: readonly string[], x: number, from: number): void {
  stream.text(say('paper.finished'), x, from - 9, TYPE, 'bold');
  for (const [k, line] of lines.entries()) stream.text(line, x, from - 9 - (k + 1) * PITCH, TYPE);
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
