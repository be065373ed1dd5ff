import { shortName } from '../telling/names.ts';
import { type Language, say } from '../words/say.ts';
import type { Dimension, Drawing, FigurePath, Point, Stroke } from './model.ts';
import type { Words } from './place-words.ts';
import { layOutValue, type Reading, valueWidth } from './value-text.ts';

/** How dimensions are set: pitch of their rows, type, room, names, and how far the rows at the sides stand out. */
export interface Dimensioning {
  readonly pitch: number;
  readonly text: number;
  readonly width: number;
  readonly names: boolean;
  readonly language: Language | undefined;
  readonly units: Drawing['units'];
  readonly reading: Reading | undefined;
  readonly onLeft: readonly number[];
  readonly onRight: readonly number[];
}

/** The drawing’s own room, beyond which its dimensions stand. */
interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Half the width of a tick, in heights of the type. */
const TICK = 0.22;

function tagOf({ name, value, place }: Dimension) {
  return { name, value, ...(place === undefined ? {} : { place }) };
}

/** Extension lines and the line with its ticks; and the value, which is still to be put on the line or beside it. */
export function dimensionStrokes(
  shape: Dimension,
  place: (point: Point) => Point,
  frame: Frame,
  how: Dimensioning,
): { readonly lines: Stroke[]; readonly words: Words } {
  const { pitch, text } = how;
  const upright = shape.side === 'left' || shape.side === 'right';
  const [a, b] = [place(shape.from), place(shape.to)];
  const tag = tagOf(shape);
  const level =
    shape.side === 'above'
      ? frame.top - shape.row * pitch + text * 0.2
      : shape.side === 'below'
        ? frame.bottom + shape.row * pitch - text * 0.2
        : shape.side === 'left'
          ? frame.left - (how.onLeft[shape.row - 1] ?? 0)
          : frame.right + (how.onRight[shape.row - 1] ?? 0);
  const ends: readonly [Point, Point] =
    shape.side === 'along'
      ? [a, b]
      : upright
        ? [
            { x: level, y: a.y },
            { x: level, y: b.y },
          ]
        : [
            { x: a.x, y: level },
            { x: b.x, y: level },
          ];
  const line = (
    p: Point,
    q: Point,
    pen: 'dimension' | 'datum' | 'fine',
    role: string,
    own = false,
  ): Stroke => ({
    kind: 'path',
    pen,
    fill: 'none',
    role,
    path: { x: p.x, y: p.y, closed: false, runs: [{ kind: 'line', x: q.x, y: q.y }] },
    ...(own ? tag : {}),
  });
  const strokes: Stroke[] = [];
  if (shape.side !== 'along')
    strokes.push(line(a, ends[0], 'fine', 'extension'), line(b, ends[1], 'fine', 'extension'));
  const tick = text * TICK;
  const broken = shape.brokenAt === undefined ? undefined : place({ x: shape.brokenAt, y: shape.brokenAt });
  const own: Stroke =
    broken === undefined
      ? line(ends[0], ends[1], 'dimension', 'dimension', true)
      : {
          kind: 'path',
          pen: 'dimension',
          fill: 'none',
          role: 'dimension',
          path: brokenLine(ends, upright ? { x: level, y: broken.y } : { x: broken.x, y: level }, text * 0.4),
          ...tag,
          broken: true,
        };
  strokes.push(own);
  for (const [k, { x, y }] of ends.entries()) {
    const datum = k === 0 && shape.datum === true;
    strokes.push(
      datum
        ? { kind: 'path', pen: 'datum', fill: 'ink', role: 'datum', path: dot(x, y, tick) }
        : line({ x: x - tick, y: y + tick }, { x: x + tick, y: y - tick }, 'dimension', 'tick'),
    );
  }
  return { lines: strokes, words: { ...wordsOf(shape, place, frame, how, ends, broken), own } };
}

/** A dimension’s name and value, and where they may stand: on its line where they have room there, else beside its ends or over it. */
function wordsOf(
  shape: Dimension,
  place: (point: Point) => Point,
  frame: Frame,
  how: Dimensioning,
  ends: readonly [Point, Point],
  broken: Point | undefined,
): Words {
  const { text } = how;
  const upright = shape.side === 'left' || shape.side === 'right';
  const tick = text * TICK;
  const words = dimensionWords(shape, how);
  const wide = valueWidth(words, shape.value, text, how.units, how.reading);
  // Beyond a break, so that both can be seen.
  const first = broken === undefined || upright ? ends[0] : { x: broken.x + text, y: ends[0].y };
  const long = Math.abs(upright ? ends[1].y - ends[0].y : ends[1].x - first.x);
  const middle = { x: (first.x + ends[1].x) / 2, y: (first.y + ends[1].y) / 2 };
  const clamp = (x: number) => Math.max(wide / 2 + 2, Math.min(how.width - wide / 2 - 2, x));
  const [left, right] = [Math.min(ends[0].x, ends[1].x), Math.max(ends[0].x, ends[1].x)];
  const level = (x: number, up = 0): Point => ({ x, y: middle.y + text * (0.35 - up) });
  const out = shape.side === 'below' ? -1 : 1;
  const off = wide / 2 + tick * 3;
  const places = (): Point[] => {
    if (upright) {
      const side = shape.side === 'left' ? -1 : 1;
      const beside = clamp(middle.x + side * (wide / 2 + text * 0.45));
      return [0, 0.5, -0.5, 1, -1, 1.5, -1.5].map((up) => level(beside, up));
    }
    if (shape.side === 'along') {
      const at =
        shape.valueAt === undefined
          ? { x: middle.x + wide / 2 + text * 0.5, y: middle.y + text * 0.9 }
          : place(shape.valueAt);
      const inwards = [0, 0.25, 0.4, 0.55].map((share) => ({
        x: at.x + (middle.x - at.x) * share,
        y: at.y + (middle.y - at.y) * share,
      }));
      const aside = [
        { x: middle.x, y: at.y },
        { x: frame.right + off, y: at.y },
        { x: frame.right + off + text, y: at.y },
        { x: middle.x - wide / 2 - text * 0.5, y: middle.y + text * 0.9 },
      ];
      return [...inwards, ...aside].map(({ x, y }) => ({ x: clamp(x), y: y + text * 0.35 }));
    }
    const beside = [level(right + off), level(left - off)];
    return [
      ...(wide + tick * 4 <= long ? [level(clamp(middle.x))] : []),
      ...beside.filter(({ x }) => clamp(x) === x),
      level(clamp(middle.x), out * 0.95),
      level(clamp(right + off), out * 0.95),
      level(clamp(left - off), out * 0.95),
      level(clamp(right + off)),
    ];
  };
  return {
    places: places(),
    put: (where) => layOutValue(words, shape.value, where, text, how.units, tagOf(shape), how.reading),
  };
}

/** What is written before a dimension's value; nothing where the drawing says it. A name above or below costs the drawing no room. */
export function dimensionWords(
  { name, side, stage, keepName, isLine }: Dimension,
  { names, language }: Pick<Dimensioning, 'names' | 'language'>,
): string {
  if (isLine === true) return say('drawing.line-at', {}, language);
  const upright = side === 'left' || side === 'right';
  return names || keepName === true || !upright ? shortName(name, language, stage) : '';
}

/** A line with a break in it, twice across and back. */
function brokenLine(ends: readonly [Point, Point], at: Point, r: number): FigurePath {
  const [from, to] = ends;
  const long = Math.max(1e-9, Math.hypot(to.x - from.x, to.y - from.y));
  const [ux, uy] = [(to.x - from.x) / long, (to.y - from.y) / long];
  const step = (along: number, off: number) => ({
    kind: 'line' as const,
    x: at.x + r * (ux * along - uy * off),
    y: at.y + r * (uy * along + ux * off),
  });
  return {
    x: from.x,
    y: from.y,
    closed: false,
    runs: [step(-1, 0), step(-0.5, -1.2), step(0.5, 1.2), step(1, 0), { kind: 'line', x: to.x, y: to.y }],
  };
}

function dot(x: number, y: number, r: number): FigurePath {
  return {
    x: x - r,
    y: y - r,
    closed: true,
    runs: [
      { kind: 'line', x: x + r, y: y - r },
      { kind: 'line', x: x + r, y: y + r },
      { kind: 'line', x: x - r, y: y + r },
    ],
  };
}
