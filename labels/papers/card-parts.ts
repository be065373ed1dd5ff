import type { PlanDoor, PlanPart } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';
import { partName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import type { Box } from '../pdf/box.ts';
import type { Faces } from '../pdf/typeface.ts';
import { asText } from '../pdf/value-on-paper.ts';
import type { PaperPage } from './paper-page.ts';
import { sizeThatFits } from './text-lines.ts';

const TITLE = 13;
/** A part's two lines: its name with its code, and its size; a little white under them. */
const OPEN = { type: 7.5, pitch: 8.8, high: 19.2 };
/** The same on one line, in type no larger than this. */
const CLOSE = { type: 6.75, pitch: 8.8, high: 9 };
const LEAST = 6;
/** White between two columns. */
const WHITE = 6;

/** The code of a part as it stands under its bars. */
export function codeText(code: string): string {
  return `${code.slice(0, 5)} ${code.slice(5)}`;
}

/** A list of parts: its height, its lines of type, and where its codes and sizes stand from its left edge. */
export interface PartsList {
  readonly height: number;
  readonly parts: readonly { readonly name: string; readonly code: string; readonly size: string }[];
  readonly type: number;
  /** Where the parts stand on a line each. */
  readonly columns: { readonly code: number; readonly size: number } | null;
}

/** The parts of a door in a width: with their codes where they are of one door alone; each on a line where that is asked for and has room. */
export function partsList(
  door: PlanDoor,
  units: Units,
  faces: Faces,
  { codes, close, width }: { readonly codes: boolean; readonly close: boolean; readonly width: number },
): PartsList {
  const parts = door.parts.map((part) => ({
    name: partName(part.part),
    code: codes ? codeText(part.code) : '',
    size: sizesOf(part, units),
  }));
  const widest = (of: (part: PartsList['parts'][number]) => string, face: keyof Faces) =>
    parts.reduce((most, part) => Math.max(most, faces[face].width(of(part), 1)), 0);
  const [name, code, size] = [
    widest((part) => part.name, 'regular'),
    widest((part) => part.code, 'bold'),
    widest((part) => part.size, 'regular'),
  ];
  const type = Math.min(CLOSE.type, (width - 2 * WHITE) / (name + code + size));
  if (!close || type < LEAST)
    return { height: TITLE + parts.length * OPEN.high, parts, type: OPEN.type, columns: null };
  const columns = { code: width - (code + size) * type - WHITE, size: width - size * type };
  return { height: TITLE + parts.length * CLOSE.high, parts, type, columns };
}

/** The parts with their sizes, from a height down. */
export function writeParts(
  { stream, faces }: PaperPage,
  { parts, type, columns }: PartsList,
  { x, y, width }: Omit<Box, 'height'>,
): void {
  const { pitch, high } = columns === null ? OPEN : CLOSE;
  stream.text(say('paper.parts'), x, y - 9, 9.5, 'bold');
  for (const [k, { name, code, size }] of parts.entries()) {
    const at = y - TITLE - k * high - pitch;
    if (columns === null) {
      const wide = faces.bold.width(code, type);
      stream.text(name, x, at, sizeThatFits(name, faces.regular, type, LEAST, width - wide - WHITE));
      stream.text(code, x + width - wide, at, type, 'bold');
      stream.text(size, x + 8, at - pitch, sizeThatFits(size, faces.regular, type, LEAST, width - 8));
    } else {
      stream.text(name, x, at, type);
      stream.text(code, x + columns.code, at, type, 'bold');
      stream.text(size, x + columns.size, at, type);
    }
  }
}

function sizesOf(part: PlanPart, units: Units): string {
  const [length = '', width = '', thickness = ''] = [part.length, part.width, part.thickness].map((each) =>
    asText(each, units),
  );
  return `${say('paper.size', { length, width, thickness })} ${units}`;
}
