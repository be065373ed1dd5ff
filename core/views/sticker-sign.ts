import { say } from '../words/say.ts';
import type { Drawing, Path, Shape } from '../drawing/model.ts';
import { area, at, label, polygon, rectangle, stroke } from '../drawing/shapes.ts';

/** Bars and gaps by turns, in modules; they only look like a symbol, since nobody scans a sign. */
const MODULES = [
  2, 1, 1, 2, 3, 2, 1, 1, 2, 2, 1, 3, 2, 1, 3, 1, 1, 2, 2, 1, 1, 3, 2, 2, 1, 1, 3, 1, 2, 2, 1, 1, 2, 3, 1, 2,
  2,
];
const SHEET = { width: 66, height: 38 };
const BARS = { from: 5, to: 61, low: 4, high: 16 };
const RAIL = { from: 21, to: 61, low: 19.5, high: 25.5, shoulder: 5, tenon: 1.5 };

/**
 * Our sticker as a sign for “scan one of these”: the arrow that points to the door's top, the part's name, the part from the back
 * with the black place where its sticker stands, and the bars. In millimetres, but of no part.
 */
export function stickerSign(): Drawing {
  return {
    title: say('ui.scan'),
    units: 'mm',
    shapes: [
      area(rectangle(0, 0, SHEET.width, SHEET.height), 'label', 'paper'),
      area(arrowUp(11.5, 19.5, 34), 'to-top', 'ink', 'none'),
      label(say('part.rail-top'), at(RAIL.from, 31), 'part', 'large', 'start', 6.5, {
        across: BARS.to - RAIL.from,
      }),
      ...rail(),
      ...bars(),
    ],
  };
}

/** An arrow with a shaft about a middle line, from its foot to its tip. */
function arrowUp(x: number, foot: number, tip: number): Path {
  const [wing, shaft] = [6.5, 2.2];
  const neck = tip - 8;
  return polygon([
    at(x, tip),
    at(x - wing, neck),
    at(x - shaft, neck),
    at(x - shaft, foot),
    at(x + shaft, foot),
    at(x + shaft, neck),
    at(x + wing, neck),
  ]);
}

/** A top rail as its own sticker shows it. */
function rail(): Shape[] {
  const { from, to, low, high, shoulder, tenon } = RAIL;
  const middle = (from + to) / 2;
  const outline = polygon([
    at(from, low + tenon),
    at(from + shoulder, low + tenon),
    at(from + shoulder, low),
    at(to - shoulder, low),
    at(to - shoulder, low + tenon),
    at(to, low + tenon),
    at(to, high - tenon),
    at(to - shoulder, high - tenon),
    at(to - shoulder, high),
    at(from + shoulder, high),
    at(from + shoulder, high - tenon),
    at(from, high - tenon),
  ]);
  return [
    area(outline, 'outline', 'wood'),
    ...[from + shoulder, to - shoulder].map((x) =>
      area(stroke(at(x, low), at(x, high)), 'shoulder', 'none', 'fine'),
    ),
    area(rectangle(middle - 7, high - 2.6, middle + 7, high - 0.7), 'sticker', 'ink', 'none'),
  ];
}

function bars(): Shape[] {
  const module = (BARS.to - BARS.from) / MODULES.reduce((sum, each) => sum + each, 0);
  let x = BARS.from;
  return MODULES.flatMap((modules, k) => {
    const from = x;
    x += modules * module;
    return k % 2 === 0 ? [area(rectangle(from, BARS.low, x, BARS.high), 'bar', 'ink', 'none')] : [];
  });
}
