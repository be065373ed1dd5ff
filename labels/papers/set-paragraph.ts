import type { Face, Faces } from '../pdf/typeface.ts';
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
  /** Lines are filled, whatever piece is broken by that. */
  readonly filled?: true;
}

/** Pieces one after another, in lines no wider than a width. */
export function setParagraph(pieces: readonly Piece[], set: Paragraph): ColumnLine[] {
  const { faces, width, indent = 0, hang = 0, turn = hang, pitch, sign, apart = 1, filled = false } = set;
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
    if (!filled && begun && x + gap + whole > width && indent + turn + whole <= width) next(turn);
    else x += gap;
    const all = piece.flatMap((words) => wordsOf(words, faces, width - indent - Math.max(turn, hang)));
    for (const [n, word] of all.entries()) {
      const wide = widthIn(word, faces);
      const space = n === 0 || x === left ? 0 : spaceOf(word, faces);
      // The first word of a piece, a sign often, does not stand alone at the end of a line.
      const second = n === 0 && all[1] !== undefined ? widthIn(all[1], faces) + spaceOf(all[1], faces) : 0;
      if (x + space + wide + second > width + 0.01 && x > left) next(hang);
      const at = x === left ? x : x + space;
      put(lines.at(-1) ?? [], { ...word, x: at }, at === x + space && n > 0);
      x = at + wide;
    }
  }
  return lines.map((runs, k) => ({
    runs: k === 0 && sign !== undefined ? [sign, ...runs] : runs,
    height: pitch,
  }));
}

/** Words one by one; what is solid stays whole, what is wider than a line is broken anywhere. */
function wordsOf(words: Words, faces: Faces, most: number): Omit<Run, 'x'>[] {
  const { text, size, weight, solid } = words;
  const fits = (word: string) => widthIn({ text: word, size, weight }, faces) <= most;
  return (solid === true && fits(text) ? [text] : text.split(/[ \n]+/))
    .filter((word) => word !== '')
    .flatMap((word) => (fits(word) ? [word] : inPieces(word, fits)))
    .map((word) => ({ text: word, size, weight }));
}

/** A word behind another of the same type is one run with it, so that it is read and found as one text. */
function put(runs: Run[], run: Run, follows: boolean): void {
  const last = runs.at(-1);
  if (follows && last?.size === run.size && last.weight === run.weight)
    runs[runs.length - 1] = { ...last, text: `${last.text} ${run.text}` };
  else runs.push(run);
}

function widthIn({ text, size, weight }: Words, faces: Faces): number {
  return widthOn(faces[weight], text, size);
}

function spaceOf(words: Words | undefined, faces: Faces): number {
  return words === undefined ? 0 : widthIn({ ...words, text: ' ' }, faces);
}

/** How wide a piece is on one line. */
function widthOf(piece: Piece, faces: Faces): number {
  return piece.reduce(
    (sum, words, k) => sum + widthIn(words, faces) + (k === 0 ? 0 : spaceOf(words, faces)),
    0,
  );
}

/** Cards of a job have most words in common. */
const widths = new WeakMap<Face, Map<string, number>>();
/** So many words are remembered. */
const MOST = 20_000;

function widthOn(face: Face, text: string, size: number): number {
  const known = widths.get(face) ?? new Map<string, number>();
  if (known.size === 0 || known.size > MOST) {
    known.clear();
    widths.set(face, known);
  }
  const before = known.get(text);
  if (before !== undefined) return before * size;
  const width = face.width(text, 1);
  known.set(text, width);
  return width * size;
}
