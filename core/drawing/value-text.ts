import { NO_BREAK } from '../length/unbroken.ts';
import { type Measure, MEASURES, type Rounding, showIn, type Shown } from '../length/reading.ts';
import type { Units } from '../length/units.ts';
import type { Point, Stroke } from './model.ts';

/** How values in a drawing are read: in which measure, and rounded to what. */
export interface Reading {
  readonly measure: Measure;
  readonly rounding: Rounding;
}

/** On paper: the job's own measure, to 1/64 in (a thousandth where the fractions are left) or 0.1 mm. */
function onPaper(units: Units): Reading {
  return { measure: MEASURES[units][0], rounding: { denominator: 64, places: units === 'in' ? 3 : 1 } };
}

/** The value as it is read, with the sign for "about" before a rounded one. */
function wholeShown(value: string | number, units: Units, reading: Reading = onPaper(units)): Shown {
  const shown = showIn(value, units, reading.measure, reading.rounding);
  return shown.near ? { ...shown, whole: `≈${NO_BREAK}${shown.whole}` } : shown;
}

/** Width of a bold digit, in ems: the widest of the face is 0.65, the 1 far less. */
const DIGIT = 0.64;
const SMALL = 0.68;

/** About how wide a name and its value are when set. */
export function valueWidth(
  words: string,
  value: string | number,
  size: number,
  units: Units,
  reading?: Reading,
): number {
  const { whole, numerator = '', denominator = '' } = wholeShown(value, units, reading);
  const fraction = Math.max(numerator.length, denominator.length) * DIGIT * SMALL;
  return (
    size *
    ((words === '' ? 0 : wordsWidth(words, NAME, false) + 0.3) +
      figuresWidth(whole) +
      (fraction === 0 ? 0 : fraction + 0.15))
  );
}

/** About how wide the figures of a value are, in ems: a space is narrower than a digit. */
function figuresWidth(text: string): number {
  return [...text].reduce((wide, each) => wide + (each === NO_BREAK ? 0.3 : DIGIT), 0);
}

/** Height of a name beside its value. */
const NAME = 0.9;

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

/** A name and its value with a stacked fraction, centred on a point of the base line, on a white ground. */
export function layOutValue(
  words: string,
  value: string | number,
  centre: Point,
  size: number,
  units: Units,
  tag: { readonly name: string; readonly value: string | number; readonly place?: string },
  reading?: Reading,
): Stroke[] {
  const { whole, numerator, denominator } = wholeShown(value, units, reading);
  const wide = valueWidth(words, value, size, units, reading);
  const text = (
    run: string,
    x: number,
    y: number,
    height: number,
    anchor: 'start' | 'middle',
    role: string,
    bold: boolean,
  ): Stroke => ({ kind: 'text', x, y, size: height, text: run, anchor, turn: 0, role, bold, ...tag });
  let x = centre.x - wide / 2;
  const strokes: Stroke[] = [groundStroke(centre, wide, size)];
  if (words !== '') {
    strokes.push(text(words, x, centre.y, size * NAME, 'start', 'dimension-name', false));
    x += size * (wordsWidth(words, NAME, false) + 0.3);
  }
  if (whole !== '') {
    strokes.push(text(whole, x, centre.y, size, 'start', 'dimension-value', true));
    x += size * (figuresWidth(whole) + (whole.endsWith(NO_BREAK) ? 0 : 0.12));
  }
  if (numerator !== undefined && denominator !== undefined) {
    const fraction = size * Math.max(numerator.length, denominator.length) * DIGIT * SMALL;
    const small = size * SMALL;
    strokes.push(
      text(numerator, x + fraction / 2, centre.y - size * 0.42, small, 'middle', 'numerator', true),
    );
    strokes.push(
      text(denominator, x + fraction / 2, centre.y + size * 0.26, small, 'middle', 'denominator', true),
    );
    strokes.push({
      kind: 'path',
      pen: 'edge',
      fill: 'none',
      role: 'fraction-bar',
      path: {
        x,
        y: centre.y - size * 0.3,
        closed: false,
        runs: [{ kind: 'line', x: x + fraction, y: centre.y - size * 0.3 }],
      },
    });
  }
  return strokes;
}

/** The white ground of a text, so that no line runs through it. */
export function groundStroke(centre: Point, wide: number, size: number): Stroke {
  const [left, right, top, bottom] = [
    centre.x - wide / 2 - 2,
    centre.x + wide / 2 + 2,
    centre.y - size * 0.95,
    centre.y + size * 0.3,
  ];
  return {
    kind: 'path',
    pen: 'none',
    fill: 'paper',
    role: 'ground',
    path: {
      x: left,
      y: top,
      closed: true,
      runs: [
        { kind: 'line', x: right, y: top },
        { kind: 'line', x: right, y: bottom },
        { kind: 'line', x: left, y: bottom },
      ],
    },
  };
}
