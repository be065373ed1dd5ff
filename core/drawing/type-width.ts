import { NO_BREAK } from '../length/unbroken.ts';

/** Width of a bold digit, in ems: the widest of the face is 0.65, the 1 far less. */
export const DIGIT = 0.64;

/** About how wide the figures of a value are, in ems: a space is narrower than a digit. */
export function figuresWidth(text: string): number {
  return [...text].reduce((wide, each) => wide + (each === NO_BREAK ? 0.3 : DIGIT), 0);
}

/** About how wide plain words are when set, rather more than less; by the kinds of their letters. */
export function wordsWidth(text: string, size: number, bold: boolean): number {
  const wide = [...text.normalize('NFD').replace(/\p{M}/gu, '')].reduce(
    (all, letter) => all + letterWidth(letter),
    0,
  );
  return size * wide * (bold ? 1.08 : 1);
}

function letterWidth(letter: string): number {
  if (/[ijlIrtf.,:;’' ]/.test(letter)) return 0.37;
  if (/[mwMW@]/.test(letter)) return 0.89;
  return /\p{Lu}/u.test(letter) ? 0.7 : 0.59;
}
