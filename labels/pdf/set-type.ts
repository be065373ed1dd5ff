import type { Faces } from './typeface.ts';

/** One stretch of plain text of one size. */
export interface TextRun {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly weight: 'regular' | 'bold';
}

/** A line of type set with its fractions: how wide it is, and its runs from a base line at 0. */
export interface SetLine {
  readonly width: number;
  readonly runs: readonly Omit<TextRun, 'weight'>[];
}

/** Nothing is printed in smaller type, numerators included. */
export const LEAST_TYPE = 6;
const FRACTION = 0.7;
/** How far a numerator stands above the figures' height and a denominator below the line, in its own size. */
const RAISED = 0.2;
const LOWERED = 0.16;
/** Cap height of the face, in ems. */
const CAPS = 0.668;

/**
 * A line in which every fraction stands diagonally: numerator raised, denominator lowered, both at least 6 pt. The texts
 * of its runs one after another are the line itself.
 */
export function setLine(text: string, faces: Faces, size: number, weight: TextRun['weight']): SetLine {
  const face = faces[weight];
  const small = Math.max(LEAST_TYPE, size * FRACTION);
  const lowered = small * LOWERED;
  const raised = (size - small) * CAPS + small * RAISED;
  const runs: Omit<TextRun, 'weight'>[] = [];
  let x = 0;
  const add = (run: string, high: number, y: number) => {
    runs.push({ text: run, x, y, size: high });
    x += face.width(run, high);
  };
  for (const piece of text.split(/(\d+\/\d+)/)) {
    const fraction = /^(\d+)\/(\d+)$/.exec(piece);
    if (fraction !== null) {
      add(fraction[1] ?? '', small, raised);
      add('/', small, (raised - lowered) / 2);
      add(fraction[2] ?? '', small, -lowered);
    } else if (piece !== '') {
      add(piece, size, 0);
      // Between a whole number and its fraction less than a word's space, never so little that they run together.
      if (/\d[ \u00a0]$/.test(piece)) x -= face.width(' ', size) * 0.25;
    }
  }
  return { width: x, runs };
}

/** A set line at its place. */
export function placeLine(line: SetLine, x: number, y: number, weight: TextRun['weight']): TextRun[] {
  return line.runs.map((run) => ({ ...run, x: x + run.x, y: y + run.y, weight }));
}
