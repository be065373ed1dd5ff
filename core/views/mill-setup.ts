import type { Shape } from '../drawing/model.ts';
import { area, at, dimension, label, rectangle, symbol } from '../drawing/shapes.ts';
import { readPart } from '../plan/part-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { member } from './stile-blank.ts';

/** The blank with its three sizes. A stile lies with its bottom end at the left; the end section stands beside it. */
export function millSetup(part: PlanPart, { settings }: StageOf<'mill'>): Shape[] {
  const { kind } = readPart(part);
  const panel = kind === 'panel';
  const [long, high] = panel
    ? ([settings.width, settings.length] as const)
    : ([settings.length, settings.width] as const);
  const [whole, y, thickness] = [drawn(long), drawn(high), drawn(settings.thickness)];
  // What is long and thin loses its middle, so that what is written on it can be read.
  const broken = whole > y * LONG;
  const x = broken ? y * LONG * 0.75 : whole;
  const gap = Math.min(x, y) * 0.5;
  const half = y * 0.08;
  return [
    ...(broken
      ? [
          area(member(0, x / 2 - half, y, { left: false, right: true }), 'outline', 'wood'),
          area(member(x / 2 + half, x, y, { left: true, right: false }), 'outline', 'wood'),
        ]
      : [area(rectangle(0, 0, x, y), 'outline', 'wood')]),
    area(rectangle(x + gap, 0, x + gap + thickness, y), 'edge', 'section'),
    ...(panel
      ? [
          symbol('arrow-up', at(x / 2, y * 0.6), 'top'),
          label(say('drawing.top'), at(x / 2, y * 0.75), 'end-name', 'large'),
        ]
      : []),
    ...(kind === 'stile'
      ? [
          label(say('drawing.bottom'), at(x * 0.04, y / 2), 'end-name', 'large', 'start', y * 0.7),
          label(say('drawing.top'), at(x * 0.96, y / 2), 'end-name', 'large', 'end', y * 0.7),
        ]
      : []),
    dimension(
      panel ? 'width' : 'length',
      long,
      at(0, 0),
      at(x, 0),
      'below',
      1,
      broken ? { brokenAt: x / 2 } : {},
    ),
    dimension(panel ? 'length' : 'width', high, at(0, 0), at(0, y), 'left', 1),
    dimension('thickness', settings.thickness, at(x + gap, y), at(x + gap + thickness, y), 'above', 1),
  ];
}

/** A blank longer than so many of its widths is drawn broken. */
const LONG = 7;
