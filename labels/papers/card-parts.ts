import type { PlanDoor, PlanPart } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';
import { partName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import type { Box } from '../pdf/box.ts';
import { asText } from '../pdf/value-on-paper.ts';
import type { PaperPage } from './paper-page.ts';
import { sizeThatFits } from './text-lines.ts';

const TITLE = 13;
/** A part's two lines: its name with its code, and its size; a little white under them. */
const OPEN = { type: 7.5, pitch: 8.8, high: 19.2 };
/** The same on one line. */
const DENSE = { type: 6.75, pitch: 8.8, high: 9 };
const LEAST = 6;

/** How high the list of parts stands. */
export function partsHeight({ parts }: PlanDoor, dense: boolean): number {
  return TITLE + parts.length * (dense ? DENSE : OPEN).high;
}

/** The code of a part as it stands under its bars. */
export function codeText(code: string): string {
  return `${code.slice(0, 5)} ${code.slice(5)}`;
}

/** How the list of parts is written: with their codes where it is of one door alone; where, and how close. */
export interface PartsList extends Omit<Box, 'height'> {
  readonly codes: boolean;
  readonly dense: boolean;
}

/** The parts with their sizes, from a height down. */
export function writeParts(
  { stream, faces }: PaperPage,
  door: PlanDoor,
  units: Units,
  { codes, dense, x, y, width }: PartsList,
): void {
  const { type, pitch, high } = dense ? DENSE : OPEN;
  const write = (text: string, left: number, right: number, at: number, weight: 'regular' | 'bold') => {
    const size = sizeThatFits(text, faces[weight], type, LEAST, right - left);
    stream.text(text, left, at, size, weight);
  };
  stream.text(say('paper.parts'), x, y - 9, 9.5, 'bold');
  const texts = door.parts.map((part) => (codes ? codeText(part.code) : ''));
  const wide = texts.reduce((most, text) => Math.max(most, faces.bold.width(text, type)), 0);
  const right = x + width;
  for (const [k, part] of door.parts.entries()) {
    const at = y - TITLE - k * high - pitch;
    const size = sizesOf(part, units);
    if (dense) {
      const sized = right - Math.min(faces.regular.width(size, type), width * 0.45);
      write(partName(part.part), x, sized - (codes ? wide + 8 : 4), at, 'regular');
      write(texts[k] ?? '', sized - wide - 4, sized - 4, at, 'bold');
      write(size, sized, right, at, 'regular');
    } else {
      write(partName(part.part), x, right - wide - 6, at, 'regular');
      write(texts[k] ?? '', right - wide, right, at, 'bold');
      write(size, x + 8, right, at - pitch, 'regular');
    }
  }
}

function sizesOf(part: PlanPart, units: Units): string {
  const [length = '', width = '', thickness = ''] = [part.length, part.width, part.thickness].map((each) =>
    asText(each, units),
  );
  return `${say('paper.size', { length, width, thickness })} ${units}`;
}
