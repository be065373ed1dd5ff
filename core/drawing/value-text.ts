import { NO_BREAK } from '../length/unbroken.ts';
import {
  type Measure,
  MEASURES,
  type Rounding,
  showIn,
  type Shown,
  USUAL_ROUNDING,
} from '../length/reading.ts';
import type { Units } from '../length/units.ts';
import { groundOf } from './ground.ts';
import type { PathStroke, Stroke, TextStroke } from './figure.ts';
import { pathThrough } from './figure-path.ts';
import type { Point } from './model.ts';
import { DIGIT, figuresWidth, wordsWidth } from './type-width.ts';

/** How values in a drawing are read: in which measure, and rounded to what. */
export interface Reading {
  readonly measure: Measure;
  readonly rounding: Rounding;
}

/** A name and its value, to be set in type of a height; read as on paper where no reading is given. */
export interface ValueText {
  readonly words: string;
  readonly value: string | number;
  readonly size: number;
  readonly units: Units;
  readonly reading: Reading | undefined;
}

/** Of which dimension a text is, for tests and assistive tools. */
export interface ValueTag {
  readonly name: string;
  readonly value: string | number;
  readonly place?: string;
}

/** Height of a name beside its value, and of a fraction's figures. */
const NAME = 0.9;
const SMALL = 0.68;

/** On paper: the job's own measure, rounded as is usual. */
function onPaper(units: Units): Reading {
  return { measure: MEASURES[units][0], rounding: USUAL_ROUNDING };
}

/** The value as it is read, with the sign for "about" before a rounded one. */
function wholeShown({ value, units, reading = onPaper(units) }: ValueText): Shown {
  const shown = showIn(value, units, reading.measure, reading.rounding);
  return shown.near ? { ...shown, whole: `≈${NO_BREAK}${shown.whole}` } : shown;
}

/** About how wide a name and its value are when set. */
export function valueWidth(text: ValueText): number {
  const { whole, numerator = '', denominator = '' } = wholeShown(text);
  const fraction = Math.max(numerator.length, denominator.length) * DIGIT * SMALL;
  return (
    text.size *
    ((text.words === '' ? 0 : wordsWidth(text.words, NAME, false) + 0.3) +
      figuresWidth(whole) +
      (fraction === 0 ? 0 : fraction + 0.15))
  );
}

/** A name and its value with a stacked fraction, centred on a point of the base line, on a white ground. */
export function layOutValue(text: ValueText, centre: Point, tag: ValueTag): Stroke[] {
  const { words, size } = text;
  const { whole, numerator, denominator } = wholeShown(text);
  const wide = valueWidth(text);
  const { y } = centre;
  let x = centre.x - wide / 2;
  const strokes: Stroke[] = [groundOf(centre, wide, size)];
  if (words !== '') {
    strokes.push(run(tag, words, { x, y }, { size: size * NAME, role: 'dimension-name', bold: false }));
    x += size * (wordsWidth(words, NAME, false) + 0.3);
  }
  if (whole !== '') {
    strokes.push(run(tag, whole, { x, y }, { size, role: 'dimension-value' }));
    x += size * (figuresWidth(whole) + (whole.endsWith(NO_BREAK) ? 0 : 0.12));
  }
  if (numerator !== undefined && denominator !== undefined)
    strokes.push(...stacked(tag, numerator, denominator, { x, y }, size));
  return strokes;
}

function run(
  tag: ValueTag,
  text: string,
  at: Point,
  how: Pick<TextStroke, 'size' | 'role'> & Partial<Pick<TextStroke, 'anchor' | 'bold'>>,
): TextStroke {
  return { kind: 'text', ...at, text, anchor: 'start', turn: 0, bold: true, ...how, ...tag };
}

/** A fraction from a point of the base line: numerator over denominator, a bar between them. */
function stacked(
  tag: ValueTag,
  numerator: string,
  denominator: string,
  { x, y }: Point,
  size: number,
): Stroke[] {
  const wide = size * Math.max(numerator.length, denominator.length) * DIGIT * SMALL;
  const middle = x + wide / 2;
  const type = { size: size * SMALL, anchor: 'middle' } as const;
  return [
    run(tag, numerator, { x: middle, y: y - size * 0.42 }, { ...type, role: 'numerator' }),
    run(tag, denominator, { x: middle, y: y + size * 0.26 }, { ...type, role: 'denominator' }),
    bar({ x, y: y - size * 0.3 }, { x: x + wide, y: y - size * 0.3 }),
  ];
}

function bar(from: Point, to: Point): PathStroke {
  return { kind: 'path', pen: 'edge', fill: 'none', role: 'fraction-bar', path: pathThrough([from, to]) };
}
