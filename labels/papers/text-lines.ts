import { inPieces } from '../pdf/in-pieces.ts';
import type { Face } from '../pdf/typeface.ts';

/** Lines of a text no wider than a width: broken between words, never inside a mixed number; inside a word only where it alone is wider. */
export function wrapLines(text: string, face: Face, size: number, width: number): string[] {
  const fits = (line: string) => face.width(line, size) <= width;
  const lines: string[] = [];
  let line = '';
  for (const word of text.match(/[^ \n]+/g) ?? []) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = inPieces(word, fits);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
  }
  return line === '' ? lines : [...lines, line];
}

/** The largest size, from the one wished for down to the least, in which a text fits a width; the least where none does. */
export function sizeThatFits(text: string, face: Face, wished: number, least: number, width: number): number {
  const wide = face.width(text, 1);
  return Math.max(least, Math.min(wished, width / Math.max(wide, 1e-9)));
}
