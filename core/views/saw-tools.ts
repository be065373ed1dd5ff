import type { Label, Point, Shape } from '../drawing/model.ts';
import { area, at, label, rectangle, stroke } from '../drawing/shapes.ts';
import { say, type WordKey } from '../words/say.ts';

/** A stretch along the machine’s table, from left to right. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The saw’s table, so high a strip of it under what lies on it, with its name and how the piece lies. */
export function tableUnder({ from, to }: Stretch, high: number, lies?: WordKey): Shape[] {
  const words = (key: WordKey, x: number, role: string, anchor: 'start' | 'end') =>
    label(say(key), at(x, -high / 2), role, 'small', anchor, high);
  return [
    area(rectangle(from, -high, to, 0), 'table', 'tool'),
    words('drawing.table', from + high * 0.3, 'table-name', 'start'),
    ...(lies === undefined ? [] : [words(lies, to - high * 0.3, 'edge-down', 'end')]),
  ];
}

/** The miter gauge’s face, which the piece is held against and fed with, away from one: what of it stands over the piece. */
export function gaugeOver(
  { from, to }: Stretch,
  top: number,
  high: number,
  feed: WordKey = 'drawing.feed-away',
): Shape[] {
  const middle = top + high / 2;
  const room = (to - from - high * 1.8) / 2;
  return [
    area(rectangle(from, top, to, top + high), 'gauge', 'tool', 'fine'),
    label(say('drawing.gauge'), at(from + high * 0.3, middle), 'gauge-name', 'small', 'start', high, {
      across: room,
    }),
    ...fedAway(at(to - high * 0.6, middle), high * 0.3, feed, { within: high, across: room }),
  ];
}

/** A square blade through the table, its face away from the stop at x = far, so high over the table; named beside it below. */
export function squareBlade(
  far: number,
  height: number,
  {
    kerf,
    low,
    name = 'drawing.blade',
  }: { readonly kerf: number; readonly low: number; readonly name?: WordKey },
): Shape[] {
  return [
    area(rectangle(far - kerf, low, far, height), 'blade', 'tool'),
    label(say(name), at(far + kerf * 0.5, low * 0.8), 'blade-name', 'small', 'start'),
  ];
}

/** The tail of an arrow that points away from one, its name at its left: how a piece is fed that is seen along its feed. */
export function fedAway(
  where: Point,
  radius: number,
  words: WordKey,
  { within, ...more }: Pick<Label, 'across' | 'ground'> & { readonly within: number },
): Shape[] {
  const { x, y } = where;
  const [a, r] = [radius * Math.SQRT1_2, radius];
  const [left, right] = [at(x - r, y), at(x + r, y)];
  return [
    area(
      {
        start: left,
        runs: [
          { kind: 'arc', to: right, centre: where, clockwise: false },
          { kind: 'arc', to: left, centre: where, clockwise: false },
        ],
      },
      'feed',
      'paper',
    ),
    area(stroke(at(x - a, y - a), at(x + a, y + a)), 'feed', 'none'),
    area(stroke(at(x - a, y + a), at(x + a, y - a)), 'feed', 'none'),
    label(say(words), at(x - radius * 1.6, y), 'feed-name', 'small', 'end', within, more),
  ];
}
