import type { Label, Point, Stroke } from './model.ts';
import type { Words } from './place-words.ts';
import { groundStroke, wordsWidth } from './value-text.ts';

/** Heights of labels, in heights of the type. */
export const TYPES = { small: 0.8, normal: 1, large: 1.4 } as const;

/** A label is turned where it becomes so many times as high. */
const WORTH_TURNING = 1.3;

/** Where a label may stand beside its point, in heights of its type. */
const BESIDE = [
  ...[0, 0.4, -0.4, 0.8, -0.8, 1.2, -1.2].flatMap((dy) =>
    [0, 0.5, -0.5, 1, -1].map((dx) => [dx, dy] as const),
  ),
  ...[2, -2, 3, -3, 4, -4].map((dx) => [dx, 0] as const),
];

/** Words at their point, or a little beside it where a line of an outline or another word is in their way. */
export function labelWords(
  shape: Label,
  place: (point: Point) => Point,
  { type, scale, width }: { readonly type: number; readonly scale: number; readonly width: number },
): Words {
  const { at, text, size, anchor, role, within = Infinity, across = Infinity, ground, shift } = shape;
  const on = place(at);
  const where = { x: on.x + (shift?.x ?? 0) * type, y: on.y - (shift?.y ?? 0) * type };
  const bold = size === 'large';
  const each = wordsWidth(text, 1, bold);
  const wanted = type * TYPES[size];
  const height = Math.min(wanted, within * scale, (across * scale) / Math.max(each, 1e-9));
  const upwards = Math.min(wanted, across * scale, (within * RUNS * scale) / Math.max(each, 1e-9));
  if (shape.mayTurn === true && upwards > height * WORTH_TURNING) return turned(shape, where, upwards);
  const wide = each * height;
  // A text stays whole inside the figure.
  const before = anchor === 'start' ? 0 : anchor === 'end' ? wide : wide / 2;
  const places = (shift === undefined ? BESIDE : BESIDE.slice(0, 1)).map(([dx, dy]) => ({
    x: Math.max(before + 2, Math.min(width - (wide - before) - 2, where.x + dx * height)),
    y: where.y + (0.35 + dy) * height,
  }));
  return {
    places,
    bound: true,
    put: ({ x, y }) => [
      ...(ground === true ? [groundStroke({ x: x - before + wide / 2, y }, wide, height)] : []),
      { kind: 'text', x, y, size: height, text, anchor, turn: 0, role, bold },
    ],
  };
}

/** A turned label may be so many times as long as a level one may be high. */
const RUNS = 4.7;

/** A label that is read upwards, its middle at its point. */
function turned({ text, size, role, ground }: Label, { x, y }: Point, height: number): Words {
  const bold = size === 'large';
  const half = wordsWidth(text, height, bold) / 2 + 2;
  const [left, right] = [-height * 0.65, height * 0.65];
  const around: Stroke = {
    kind: 'path',
    pen: 'none',
    fill: 'paper',
    role: 'ground',
    path: {
      x: x + left,
      y: y - half,
      closed: true,
      runs: [
        { kind: 'line', x: x + right, y: y - half },
        { kind: 'line', x: x + right, y: y + half },
        { kind: 'line', x: x + left, y: y + half },
      ],
    },
  };
  const words = { kind: 'text', size: height, text, anchor: 'middle', turn: 90, role, bold } as const;
  return {
    places: [{ x, y }],
    put: () => [...(ground === true ? [around] : []), { ...words, x: x + height * 0.35, y }],
  };
}
