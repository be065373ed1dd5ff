import type { Box } from './box.ts';
import { extensions, lineOf, type Rows, standing, tagOf, ticks } from './dimension-line.ts';
import { valueText, type Writing } from './dimension-words.ts';
import type { Dimension, Point } from './model.ts';
import type { PathStroke } from './figure.ts';
import type { Words } from './place-words.ts';
import { valuePlaces } from './value-places.ts';
import { layOutValue, valueWidth } from './value-text.ts';

/** How dimensions are set: their rows and writing, in a figure of a width. */
export interface Dimensioning extends Rows, Writing {
  readonly width: number;
}

/** Extension lines and the line with its ticks; and the value, which is still to be put on the line or beside it. */
export function dimensionStrokes(
  shape: Dimension,
  place: (point: Point) => Point,
  frame: Box,
  how: Dimensioning,
): { readonly lines: PathStroke[]; readonly words: Words } {
  const { text, width } = how;
  const dimension = standing(shape, place, frame, how);
  const own = lineOf(dimension, text);
  const value = valueText(shape, how);
  const room = { wide: valueWidth(value), text, width, right: frame.right, place };
  return {
    lines: [...extensions(dimension), own, ...ticks(dimension, text)],
    words: {
      places: valuePlaces(dimension, room),
      put: (where) => layOutValue(value, where, tagOf(shape)),
      own,
    },
  };
}
