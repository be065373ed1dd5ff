import { number } from './pdf-number.ts';
import type { TextRun } from './set-type.ts';
import type { Faces } from './typeface.ts';

/** A run of text on its base line, as the operators of a page's stream. */
export function textOperators({ text, x, y, size, weight }: TextRun, faces: Faces): string {
  return `BT /${weight === 'bold' ? 'B' : 'R'} ${number(size)} Tf ${number(x)} ${number(y)} Td ${faces[weight].encode(text)} Tj ET`;
}
