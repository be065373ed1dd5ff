import { ground, groundOf } from './ground.ts';
import type { Label, Point } from './model.ts';
import type { Words } from './place-words.ts';
import { wordsWidth } from './type-width.ts';

/** Heights of labels, in heights of the type. */
export const TYPES = { small: 0.8, normal: 1, large: 1.4 } as const;

/** A label is turned where it becomes so many times as high. */
const WORTH_TURNING = 1.3;

/** A turned label may be so many times as long as a level one may be high. */
const RUNS = 4.7;

/** Where a label may stand beside its point, in heights of its type. */
const BESIDE = [
  ...[0, 0.4, -0.4, 0.8, -0.8, 1.2, -1.2].flatMap((dy) =>
    [0, 0.5, -0.5, 1, -1].map((dx) => [dx, dy] as const),
  ),
  ...[2, -2, 3, -3, 4, -4].map((dx) => [dx, 0] as const),
];

/** The height of a figure's labels, its scale, and how wide it is: a text stays whole inside it. */
interface LabelRoom {
  readonly type: number;
  readonly scale: number;
  readonly width: number;
}

/** Words at their point, or a little beside it where a line of an outline or another word is in their way. */
export function labelWords(shape: Label, place: (point: Point) => Point, room: LabelRoom): Words {
  const { at, shift } = shape;
  const on = place(at);
  const where = { x: on.x + (shift?.x ?? 0) * room.type, y: on.y - (shift?.y ?? 0) * room.type };
  const { level, upwards } = heightsOf(shape, room);
  return shape.mayTurn === true && upwards > level * WORTH_TURNING
    ? turned(shape, where, upwards)
    : levelled(shape, where, level, room.width);
}

/** How high a label's type may be, level and read upwards. */
function heightsOf({ text, size, within = Infinity, across = Infinity }: Label, { type, scale }: LabelRoom) {
  const each = Math.max(wordsWidth(text, 1, size === 'large'), 1e-9);
  const wanted = type * TYPES[size];
  return {
    level: Math.min(wanted, within * scale, (across * scale) / each),
    upwards: Math.min(wanted, across * scale, (within * RUNS * scale) / each),
  };
}

function levelled(shape: Label, where: Point, height: number, width: number): Words {
  const { text, size, anchor, role, ground: white, shift } = shape;
  const bold = size === 'large';
  const wide = wordsWidth(text, 1, bold) * height;
  const before = anchor === 'start' ? 0 : anchor === 'end' ? wide : wide / 2;
  return {
    places: (shift === undefined ? BESIDE : BESIDE.slice(0, 1)).map(([dx, dy]) => ({
      x: Math.max(before + 2, Math.min(width - (wide - before) - 2, where.x + dx * height)),
      y: where.y + (0.35 + dy) * height,
    })),
    bound: true,
    put: ({ x, y }) => [
      ...(white === true ? [groundOf({ x: x - before + wide / 2, y }, wide, height)] : []),
      { kind: 'text', x, y, size: height, text, anchor, turn: 0, role, bold },
    ],
  };
}

/** A label that is read upwards, its middle at its point. */
function turned({ text, size, role, ground: white }: Label, { x, y }: Point, height: number): Words {
  const bold = size === 'large';
  const half = wordsWidth(text, height, bold) / 2 + 2;
  const around = { left: x - height * 0.65, right: x + height * 0.65, top: y - half, bottom: y + half };
  const words = { kind: 'text', size: height, text, anchor: 'middle', turn: 90, role, bold } as const;
  return {
    places: [{ x, y }],
    put: () => [...(white === true ? [ground(around)] : []), { ...words, x: x + height * 0.35, y }],
  };
}
