import type { Faces } from '../pdf/typeface.ts';
import { LEAST_TYPE, type SetLine, setLine } from '../pdf/set-type.ts';
import type { Size } from '../pdf/box.ts';
import { BETWEEN_NOTES, breakWords, type Broken, type Word } from './break-words.ts';

/** Notes broken into lines of one size of type. */
export interface NoteLines {
  readonly lines: readonly SetLine[];
  readonly size: number;
}

/** From one base line to the next, in sizes of the type: enough for fractions above and tails below. */
export const LEADING = 1.18;
/** From the top of an area to its first base line, in sizes of the type. */
export const FIRST = 0.9;
const LARGEST_NOTE = 9;
const STEP = 0.5;

/** A number with its fraction, and sizes joined by ×, are one word. */
const NUMBER = String.raw`(?:\d+[ \u00a0]\d+/\d+|\d+/\d+|\d+)`;
const WORDS = new RegExp(`${NUMBER}(?: × ${NUMBER})*[,;:]?(?!\\S)|[^ ]+`, 'g');

/** A stretch of notes set, and what is left over. */
export interface TakenNotes {
  readonly taken: NoteLines;
  readonly rest: Notes;
}

/**
 * A sticker's notes, to be set in areas of various sizes. A line is never broken inside a number; a word longer than a
 * line, as a job may be named, is broken anywhere.
 */
export class Notes {
  readonly #notes: readonly string[];
  readonly #faces: Faces;
  readonly #measured = new Map<number, readonly Word[]>();
  readonly #lengths = new Map<number, number>();

  constructor(notes: readonly string[], faces: Faces) {
    this.#notes = notes;
    this.#faces = faces;
  }

  get empty(): boolean {
    return this.#notes.length === 0;
  }

  /** In the largest type, from 9 pt down to 6, that fits an area; null where none does. */
  fit(area: Size): NoteLines | null {
    for (let size = LARGEST_NOTE; size >= LEAST_TYPE; size -= STEP) {
      const most = mostLines(area, size);
      if (this.#long(size) > area.width * most) continue;
      const lines = this.#break(area.width, size, most);
      if (lines?.done === true) return this.#set(lines.texts, size);
    }
    return null;
  }

  /**
   * As many as fill an area in one size of type, and the rest; null where not even a word fits. `whole`: a note that does
   * not fit whole is kept for the rest, unless it is the first.
   */
  take(area: Size, size: number, whole: boolean): TakenNotes | null {
    const lines = this.#break(area.width, size, mostLines(area, size));
    if (lines === null || lines.texts.length === 0) return null;
    const begun = this.#words(size)
      .slice(0, lines.next + 1)
      .filter(({ first }) => first).length;
    if (whole && begun > 1) {
      const taken = new Notes(this.#notes.slice(0, begun - 1), this.#faces).fit(area);
      if (taken !== null) return { taken, rest: new Notes(this.#notes.slice(begun - 1), this.#faces) };
    }
    const rest: string[] = lines.left === '' ? [] : [lines.left];
    for (const { text, first } of this.#words(size).slice(lines.next)) {
      const last = rest.pop();
      if (last === undefined) rest.push(text);
      else if (first) rest.push(last, text);
      else rest.push(`${last} ${text}`);
    }
    return { taken: this.#set(lines.texts, size), rest: new Notes(rest, this.#faces) };
  }

  #set(lines: readonly string[], size: number): NoteLines {
    return { lines: lines.map((line) => setLine(line, this.#faces, size, 'regular')), size };
  }

  #words(size: number): readonly Word[] {
    const known = this.#measured.get(size);
    if (known !== undefined) return known;
    const words = this.#notes.flatMap((note) =>
      (note.match(WORDS) ?? []).map((text, k): Word => ({
        text,
        width: this.#width(text, size),
        first: k === 0,
      })),
    );
    this.#measured.set(size, words);
    return words;
  }

  /** How long all words are in a row, without what stands between them: what cannot fit is not tried. */
  #long(size: number): number {
    let long = this.#lengths.get(size);
    if (long === undefined) {
      long = this.#words(size).reduce((total, { width }) => total + width, 0);
      this.#lengths.set(size, long);
    }
    return long;
  }

  #width(text: string, size: number): number {
    return setLine(text, this.#faces, size, 'regular').width;
  }

  #break(width: number, size: number, most: number): Broken | null {
    const { regular } = this.#faces;
    return breakWords(this.#words(size), {
      width,
      most,
      widthOf: (text) => this.#width(text, size),
      space: regular.width(' ', size),
      dot: regular.width(BETWEEN_NOTES, size),
    });
  }
}

function mostLines(area: Size, size: number): number {
  return Math.max(0, Math.floor(area.height / (size * LEADING)));
}
