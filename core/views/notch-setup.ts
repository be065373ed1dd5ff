import type { Shape } from '../drawing/model.ts';
import { area, at, dimension, label, rectangle } from '../drawing/shapes.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { gaugeOver, squareBlade, tableUnder } from './saw-tools.ts';
import { drawnEnd, placed, stileBlank } from './stile-blank.ts';
import { BLOCK, faceNote, fromEnd, lieFor, stopBlock } from './stile-setups.ts';

/** How thick the table is drawn, and how wide a kerf at most, in widths of a stile. */
const TABLE = 0.17;
const KERF = 0.08;

/**
 * The notch that takes the bead away at a rail: crosscuts side by side, sight edge down, the blade square. It is drawn at
 * both outer cuts: the near one's near face is on the one line, or at the end, the far one's far face on the other.
 */
export function notchSetup(part: PlanPart, { settings: s }: StageOf<'notch'>): Shape[] {
  const { width } = profileOf(part);
  const [from, to, height] = [drawn(s.from), drawn(s.to), drawn(s.height)];
  const lie = lieFor(part, { leftEnd: s.fromEnd, above: 'outer' }, from, to);
  const [x1, x2, end] = [placed(lie, width, from).x, placed(lie, width, to).x, drawnEnd(part, lie)];
  const kerf = Math.min(width * KERF, (x2 - x1) / 4);
  const low = -width * 0.36;
  // At an end the cut at the line comes first: the others go out from it.
  const [nearer, farther] =
    from > 0
      ? (['drawing.first-cut', 'drawing.last-cut'] as const)
      : (['drawing.last-cut', 'drawing.first-cut'] as const);
  const whole = { from: -width * BLOCK, to: end };
  return [
    ...gaugeOver(whole, width, width * TABLE),
    ...stileBlank(part, lie),
    ...stopBlock(width),
    ...tableUnder(whole, width * TABLE, 'drawing.sight-edge-down'),
    area(rectangle(x1, 0, x2, height), 'notch', 'waste', 'cut'),
    area(rectangle(x1, low, x1 + kerf, height), 'blade', 'tool'),
    label(say(nearer), at(x1 - kerf * 0.5, low * 0.8), 'blade-name', 'small', 'end'),
    ...squareBlade(x2, height, { kerf, low, name: farther }),
    ...(x2 - x1 < width * 1.25
      ? []
      : [label(say('drawing.blade'), at((x1 + x2) / 2, low * 0.8), 'blade-name', 'small')]),
    ...faceNote(part, lie),
    ...(from > 0 ? [fromEnd(part, lie, 'from', s.from, 0, 'below', 1)] : []),
    fromEnd(part, lie, 'to', s.to, 0, 'below', from > 0 ? 2 : 1),
    dimension('length', s.length, at(x1, width), at(x2, width), 'above', 1),
    dimension('height', s.height, at(end, 0), at(end, height), 'right', 1, { datum: true }),
  ];
}
