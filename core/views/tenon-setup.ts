import type { Path, Point, Shape } from '../drawing/model.ts';
import { area, at, dimension, label, rectangle, stroke } from '../drawing/shapes.ts';
import { moved, shifted } from '../outline/moved.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { say, type WordKey } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { railEndOutline, stopAt } from './rail-setups.ts';
import { shoulderOf } from './rail-blank.ts';
import { gaugeOver, squareBlade, tableUnder } from './saw-tools.ts';

/** One edge of the tenon, down on the table: its own stop and blade height, and what of the other edge comes off besides. */
interface EdgeDown {
  /** Where the rail’s end is drawn. */
  readonly x: number;
  readonly stop: number;
  readonly height: number;
  readonly other: { readonly stop: number; readonly height: number };
  readonly outer: boolean;
  readonly words: WordKey;
}

const DATUM = { datum: true } as const;

/**
 * The tenon’s edges, each as it lies on the table for its cut, the rail’s end against the stop: the outer edge down at the
 * left, the sight edge down beside it. A mid rail has two sight edges, both cut alike.
 */
export function tenonSetup(part: PlanPart, { settings: s }: StageOf<'tenon'>): Shape[] {
  const inner = { stop: drawn(s.innerStop), height: drawn(s.innerHeight) };
  const wide = drawn(s.width);
  const { reach, block } = sizesOf(part);
  const x = s.outerHeight === undefined ? 0 : reach + block * 1.4;
  const outer =
    s.outerStop === undefined || s.outerHeight === undefined
      ? null
      : { stop: drawn(s.outerStop), height: drawn(s.outerHeight) };
  const tenon = x + Math.min(inner.stop, outer?.stop ?? inner.stop) * 0.3;
  return [
    ...(outer === null || s.outerStop === undefined || s.outerHeight === undefined
      ? edgeDown(part, { x, ...inner, other: inner, outer: false, words: 'drawing.each-edge-down' })
      : [
          ...edgeDown(part, { x: 0, ...outer, other: inner, outer: true, words: 'drawing.outer-edge-down' }),
          ...edgeDown(part, { x, ...inner, other: outer, outer: false, words: 'drawing.sight-edge-then' }),
          dimension('outerStop', s.outerStop, at(0, 0), at(outer.stop, 0), 'below', 1, DATUM),
          ...heightOf(part, 0, 'outerHeight', s.outerHeight),
        ]),
    dimension('innerStop', s.innerStop, at(x, 0), at(x + inner.stop, 0), 'below', 1, DATUM),
    ...(outer === null
      ? [
          dimension(
            'innerHeight',
            s.innerHeight,
            at(x + reach, 0),
            at(x + reach, inner.height),
            'right',
            1,
            DATUM,
          ),
        ]
      : heightOf(part, x, 'innerHeight', s.innerHeight)),
    label(say('drawing.both-ends'), at(reach * 0.72, profileOf(part).width * 0.66), 'both', 'small'),
    dimension('width', s.width, at(tenon, inner.height), at(tenon, inner.height + wide), 'along', 0),
  ];
}

/** The blade’s height over the table beside its cut, its name and value on the rail over it. */
function heightOf(part: PlanPart, x: number, name: string, printed: string): Shape[] {
  const { reach } = sizesOf(part);
  const [line, height] = [x + reach * 0.92, drawn(printed)];
  return [
    area(stroke(at(x + shoulderOf(part), height), at(line, height)), 'level', 'none', 'fine'),
    dimension(name, printed, at(line, 0), at(line, height), 'along', 0, {
      ...DATUM,
      valueAt: at(x + reach * 0.62, height + reach * 0.13),
    }),
  ];
}

/** How far the rail is drawn, and its stop block, table and kerf. */
function sizesOf(part: PlanPart) {
  const { width } = profileOf(part);
  const tenon = shoulderOf(part);
  const reach = Math.max(tenon * 1.9, width * 0.82);
  return { reach, block: reach * 0.31, table: reach * 0.13, kerf: tenon * 0.1 };
}

function edgeDown(part: PlanPart, { x, stop, height, other, outer, words }: EdgeDown): Shape[] {
  const { width } = profileOf(part);
  const { reach, block, table, kerf } = sizesOf(part);
  const whole = { from: x - block, to: x + reach };
  const shoulder = shoulderOf(part);
  return [
    ...gaugeOver(whole, width, table, 'drawing.feed'),
    area(shifted(turned(railEndOutline(part, reach), width, outer), x, 0), 'outline', 'wood'),
    ...stopAt(x, width, block),
    ...tableUnder(whole, table),
    area(rectangle(x, width - other.height, x + other.stop, width), 'other-edge', 'none', 'hidden'),
    area(
      stroke(at(x + shoulder, height), at(x + shoulder, width - other.height)),
      'shoulder',
      'none',
      'fine',
    ),
    area(rectangle(x, 0, x + stop, height), 'tenon-waste', 'waste', 'cut'),
    ...squareBlade(x + stop, height, { kerf, low: -table * 2 }),
    label(
      say(words),
      at(x + (reach - block) / 2, width + table * 1.9),
      'pass',
      'normal',
      'middle',
      Infinity,
      {
        across: reach + block,
      },
    ),
  ];
}

/** A rail’s end upside down where its outer edge is down. */
function turned(path: Path, width: number, outer: boolean): Path {
  return outer ? moved(path, ({ x, y }: Point) => at(x, width - y), true) : path;
}
