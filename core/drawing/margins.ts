import type { Language } from '../words/say.ts';
import type { Rows } from './dimension-line.ts';
import { valueText, type Writing } from './dimension-words.ts';
import { TYPES } from './label-words.ts';
import type { Dimension, Drawing, Label, Point } from './model.ts';
import { wordsWidth } from './type-width.ts';
import { type Reading, valueWidth } from './value-text.ts';

/** How the words and values of a figure are set. */
export interface Lettering {
  /** Height of the type, in the medium's units. */
  readonly text: number;
  /** Height of the type of labels, which stays where that of the dimensions is made smaller. */
  readonly labels?: number;
  /** Names on dimensions beside their values. */
  readonly names?: boolean;
  readonly language?: Language;
  /** How values are read; when not given as on paper. */
  readonly reading?: Reading;
}

/** Room at the four sides of a drawing, in the medium's units. */
export interface Sides {
  readonly left: number;
  readonly right: number;
  readonly above: number;
  readonly below: number;
}

/** What stands round a drawing: its dimensions in their rows, beyond the words that are moved off its edges. */
export interface Margins {
  readonly rows: Rows;
  /** For the words alone. */
  readonly pads: Sides;
  /** For words and dimensions. */
  readonly sides: Sides;
}

/** How a drawing's dimensions are written. */
export function writingOf({ units }: Drawing, { text, names = true, language, reading }: Lettering): Writing {
  return { text, names, language, units, reading };
}

/** The room that words and dimensions need round a drawing; it does not depend on the scale. */
export function marginsOf(drawing: Drawing, lettering: Lettering): Margins {
  const { text, labels = text } = lettering;
  const writing = writingOf(drawing, lettering);
  const pads = padsOf(drawing, labels);
  const pitch = text * 1.7;
  const gap = text * 0.6;
  const [onLeft, onRight] = [columns(drawing, 'left', writing), columns(drawing, 'right', writing)];
  const upright = (side: 'above' | 'below', over: number) => {
    const rows = Math.max(0, ...onSide(drawing, side).map(({ row }) => row));
    return rows === 0 ? gap : rows * pitch + gap + over;
  };
  return {
    rows: { pitch, text, onLeft, onRight },
    pads,
    sides: {
      left: pads.left + (onLeft.at(-1) ?? gap),
      right: pads.right + (onRight.at(-1) ?? gap),
      above: pads.above + upright('above', text * 0.7),
      below: pads.below + upright('below', text * 0.3),
    },
  };
}

function onSide(drawing: Drawing, side: Dimension['side']): Dimension[] {
  return drawing.shapes.flatMap((each) => (each.kind === 'dimension' && each.side === side ? [each] : []));
}

/** The room for words that are moved off the drawing's edges, in the medium's units. */
function padsOf(drawing: Drawing, type: number): Sides {
  const most = (room: (label: Label, shift: Point) => number) =>
    Math.max(
      0,
      ...drawing.shapes.map((each) =>
        each.kind === 'label' && each.shift !== undefined ? room(each, each.shift) : 0,
      ),
    );
  const wide = ({ text, size }: Label) => wordsWidth(text, TYPES[size], size === 'large');
  const beside = (side: 1 | -1) => type * most((label, { x }) => (x * side > 0 ? x * side + wide(label) : 0));
  const over = (side: 1 | -1) =>
    type * most(({ size }, { y }) => (y * side > 0 ? y * side + TYPES[size] * 0.5 : 0));
  return { left: beside(-1), right: beside(1), above: over(1), below: over(-1) };
}

/** How far each row at a side stands out: beyond the texts of the rows before it. The last number is the room they all need. */
function columns(drawing: Drawing, side: 'left' | 'right', writing: Writing): number[] {
  const dimensions = onSide(drawing, side);
  if (dimensions.length === 0) return [];
  const outs = [writing.text];
  for (let row = 1; row <= Math.max(...dimensions.map((each) => each.row)); row += 1) {
    const widths = dimensions
      .filter((each) => each.row === row)
      .map((each) => valueWidth(valueText(each, writing)));
    outs.push((outs.at(-1) ?? 0) + (widths.length === 0 ? 0 : Math.max(...widths) + writing.text * 1.2));
  }
  return outs;
}
