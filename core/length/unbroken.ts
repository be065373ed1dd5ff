/** Keeps a number on one line: the space before a fraction, and behind the sign for "about", lets no line break there. */
export const NO_BREAK = '\u00a0';

/** The same text with no-break spaces inside its numbers: "14 3/4", "≈ 1/16". */
export function unbroken(text: string): string {
  return text.replace(/(?<=\d) (?=\d+\/\d)|(?<=≈) (?=\S)/g, NO_BREAK);
}

/** The same text with plain spaces: what was copied from a screen is typed back in. */
export function plainSpaces(text: string): string {
  return text.replace(/[\u00a0\u2009\u202f]/g, ' ');
}
