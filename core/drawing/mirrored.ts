import { moved } from '../outline/moved.ts';
import type { Dimension, Label, Point, Shape, Symbol } from './model.ts';

/** A shape as it is seen from the other side: left and right change places about x = 0; words stay as they are read. */
export function mirrored(shape: Shape): Shape {
  switch (shape.kind) {
    case 'area':
      return { ...shape, path: moved(shape.path, flipped, true) };
    case 'dimension':
      return {
        ...shape,
        from: flipped(shape.from),
        to: flipped(shape.to),
        side: SIDES[shape.side],
        ...(shape.brokenAt === undefined ? {} : { brokenAt: -shape.brokenAt }),
        ...(shape.valueAt === undefined ? {} : { valueAt: flipped(shape.valueAt) }),
      };
    case 'label':
      return {
        ...shape,
        at: flipped(shape.at),
        anchor: ANCHORS[shape.anchor],
        ...(shape.shift === undefined ? {} : { shift: flipped(shape.shift) }),
      };
    case 'symbol':
      return { ...shape, at: flipped(shape.at), symbol: signSeen(shape.symbol) };
  }
}

const SIDES: { readonly [S in Dimension['side']]: Dimension['side'] } = {
  above: 'above',
  below: 'below',
  left: 'right',
  right: 'left',
  along: 'along',
};
const ANCHORS: { readonly [A in Label['anchor']]: Label['anchor'] } = {
  start: 'end',
  middle: 'middle',
  end: 'start',
};

function signSeen(sign: Symbol['symbol']): Symbol['symbol'] {
  if (sign === 'arrow-left') return 'arrow-right';
  return sign === 'arrow-right' ? 'arrow-left' : sign;
}

function flipped({ x, y }: Point): Point {
  return { x: -x, y };
}
