import { inPieces } from '../pdf/in-pieces.ts';

/** A word of the notes and how wide it is set. */
export interface Word {
  readonly text: string;
  readonly width: number;
  /** Begins a note, so that a dot parts it from the one before on the same line. */
  readonly first: boolean;
}

/** The lines that words are set in, and what type needs there. */
export interface Lines {
  readonly width: number;
  readonly most: number;
  readonly widthOf: (text: string) => number;
  /** How wide a space is, and what stands between two notes. */
  readonly space: number;
  readonly dot: number;
}

/** Words in lines, as far as there are lines for them. */
export interface Broken {
  readonly texts: readonly string[];
  /** What is left of a word that was begun. */
  readonly left: string;
  /** The first word that found no place. */
  readonly next: number;
  readonly done: boolean;
}

export const BETWEEN_NOTES = ' · ';

/** Lines as full as they go, up to so many, and the first word that found no place; null where a word cannot be broken to fit. */
export function breakWords(words: readonly Word[], lines: Lines): Broken | null {
  const texts: string[] = [];
  let [line, long] = ['', 0];
  for (const [k, word] of words.entries()) {
    const gap = line === '' ? 0 : word.first ? lines.dot : lines.space;
    if (lines.most > 0 && long + gap + word.width <= lines.width) {
      line += `${line === '' ? '' : word.first ? BETWEEN_NOTES : ' '}${word.text}`;
      long += gap + word.width;
      continue;
    }
    const pieces = word.width <= lines.width ? [word.text] : piecesOf(word.text, lines);
    const last = pieces.at(-1);
    if (last === undefined) return null;
    if (line !== '') texts.push(line);
    if (texts.length + pieces.length > lines.most) return unfinished(texts, pieces, k, lines.most);
    texts.push(...pieces.slice(0, -1));
    [line, long] = [last, lines.widthOf(last)];
  }
  return { texts: line === '' ? texts : [...texts, line], left: '', next: words.length, done: true };
}

/** A word longer than all the lines there are goes on elsewhere; a shorter one is kept whole for there. */
function unfinished(texts: readonly string[], pieces: readonly string[], k: number, most: number): Broken {
  if (pieces.length <= most) return { texts, left: '', next: k, done: false };
  const here = most - texts.length;
  return {
    texts: [...texts, ...pieces.slice(0, here)],
    left: here === 0 ? '' : pieces.slice(here).join(''),
    next: here === 0 ? k : k + 1,
    done: false,
  };
}

/** A long word in pieces that fit a line; none where not even a letter fits, or it is a number. */
function piecesOf(word: string, { width, widthOf }: Lines): string[] {
  const fits = (piece: string) => widthOf(piece) <= width;
  const [first = ''] = word;
  return /\d\/\d/.test(word) || !fits(first) ? [] : inPieces(word, fits);
}
