import type { PlanDoor, PlanPart } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';
import { partName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import type { Box } from '../pdf/box.ts';
import { asText } from '../pdf/value-on-paper.ts';
import type { PaperPage } from './paper-page.ts';
import { sizeThatFits } from './text-lines.ts';

const TITLE = 13;
const NAME = 7.5;
/** A part's two lines: its name with its code, and its size; a little white under them. */
const PITCH = 8.8;
const PART = 2 * PITCH + 1.6;
const LEAST = 6;

/** How high the list of parts stands. */
export function partsHeight({ parts }: PlanDoor): number {
  return TITLE + parts.length * PART;
}

/** The code of a part as it stands under its bars. */
export function codeText(code: string): string {
  return `${code.slice(0, 5)} ${code.slice(5)}`;
}

/** The parts with their sizes, from a height down; of one door alone with their codes. */
export function writeParts(
  { stream, faces }: PaperPage,
  door: PlanDoor,
  units: Units,
  codes: boolean,
  { x, y, width }: Omit<Box, 'height'>,
): void {
  stream.text(say('paper.parts'), x, y - 9, 9.5, 'bold');
  for (const [k, part] of door.parts.entries()) {
    const at = y - TITLE - k * PART - PITCH;
    const code = codes ? codeText(part.code) : '';
    const wide = faces.bold.width(code, NAME);
    const name = partName(part.part);
    stream.text(name, x, at, sizeThatFits(name, faces.regular, NAME, LEAST, width - wide - 6));
    stream.text(code, x + width - wide, at, NAME, 'bold');
    const sizes = sizesOf(part, units);
    stream.text(sizes, x + 8, at - PITCH, sizeThatFits(sizes, faces.regular, NAME, LEAST, width - 8));
  }
}

function sizesOf(part: PlanPart, units: Units): string {
  const [length = '', width = '', thickness = ''] = [part.length, part.width, part.thickness].map((each) =>
    asText(each, units),
  );
  return `${say('paper.size', { length, width, thickness })} ${units}`;
}
