import type { Faces } from '../pdf/typeface.ts';
import { inPieces } from '../pdf/in-pieces.ts';
import type { ColumnLine, Run } from './column-flow.ts';

/** Words in one type. A solid one is never broken at its spaces, as a value is not. */
export interface Words {
  readonly text: string;
  readonly size: number;
  readonly weight: 'regular' | 'bold';
  readonly solid?: true;
}

/** Words that stay on one line wherever a line takes them all: a setting's name, its value, and where it is measured from. */
export type Piece = readonly Words[];

export interface Paragraph {
  readonly faces: Faces;
  readonly width: number;
  /** How far all lines are set in; those besides that begin with a piece, and those that go on with one. */
  readonly indent?: number;
  readonly turn?: number;
  readonly hang?: number;
  /** Height of a line. */
  readonly pitch: number;
  /** A sign before the first line, at this place. */
  readonly sign?: Run;
  /** Between one piece and the next on a line, in spaces. */
  readonly apart?: number;
}

/** Pieces one after another, in lines no wider than a width. */
export function setParagraph(pieces: readonly Piece[], set: Paragraph): ColumnLine[] {
  const { faces, width, indent = 0, hang = 0, turn = hang, pitch, sign, apart = 1 } = set;
  const lines: Run[][] = [[]];
  let left = indent;
  let x = left;
  const next = (setIn: number) => {
    lines.push([]);
    left = indent + setIn;
    x = left;
  };
  for (const piece of pieces) {
    const begun = x > left;
    const gap = begun ? apart * spaceOf(piece[0], faces) : 0;
    const whole = widthOf(piece, faces);
    if (begun && x + gap + whole > width && indent + turn + whole <= width) next(turn);
    else x += gap;
    let first = true;
    for (const { text, size, weight, solid } of piece) {
      const fits = (word: string) => indent + Math.max(turn, hang) + faces[weight].width(word, size) <= width;
      const words = (solid === true && fits(text) ? [text] : text.split(/[ \n]+/))
        .filter((word) => word !== '')
        .flatMap((word) => (fits(word) ? [word] : inPieces(word, fits)));
      for (const word of words) {
        const wide = faces[weight].width(word, size);
        const space = first || x === left ? 0 : faces[weight].width(' ', size);
        if (x + space + wide > width + 0.01 && x > left) next(hang);
        const at = x === left ? x : x + space;
        put(lines.at(-1) ?? [], { text: word, x: at, size, weight }, at === x + space && !first);
        x = at + wide;
        first = false;
      }
    }
  }
  return lines.map((runs, k) => ({
    runs: k === 0 && sign !== undefined ? [sign, ...runs] : runs,
    height: pitch,
  }));
}

/** A word behind another of the same type is one run with it, so that it is read and found as one text. */
function put(runs: Run[], run: Run, follows: boolean): void {
  const last = runs.at(-1);
  if (follows && last?.size === run.size && last.weight === run.weight)
    runs[runs.length - 1] = { ...last, text: `${last.text} ${run.text}` };
  else runs.push(run);
}

function spaceOf(words: Words | undefined, faces: Faces): number {
  return words === undefined ? 0 : faces[words.weight].width(' ', words.size);
}

/** How wide a piece is on one line. */
function widthOf(piece: Piece, faces: Faces): number {
  return piece.reduce(
    (sum, { text, size, weight }, k) =>
      sum + faces[weight].width(text, size) + (k === 0 ? 0 : faces[weight].width(' ', size)),
    0,
  );
}
