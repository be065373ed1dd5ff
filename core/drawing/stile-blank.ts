import type { PlanPart } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import type { Path, Shape } from './model.ts';
import { drawn, profileOf, stageOf } from './plan-number.ts';
import { area, at, label, polygon, rectangle, stroke } from './shapes.ts';

/** How a stile lies in a drawing: its length along x, one end at the left. */
export interface StileLie {
  /** The end at x = 0: the one against the stop. */
  readonly leftEnd: 'top' | 'bottom';
  /** Which edge is above: the bead's or the outer one. */
  readonly above: 'bead' | 'outer';
  /** Drawn from x = 0 up to here, with a break beyond; the whole length when not given. */
  readonly upTo?: number;
}

/** The face that is seen when a stile lies so: turning it end for end shows the other one. */
export function faceSeen(part: PlanPart, lie: StileLie): 'front' | 'back' {
  const left = part.part === 'stile-left';
  const turned = (lie.leftEnd === 'top') === (lie.above === 'bead');
  return left === turned ? 'front' : 'back';
}

/** A stile lying on its edge or flat: outline, bead line, groove, mortises, and both ends named. */
export function stileBlank(part: PlanPart, lie: StileLie, highlight?: string): Shape[] {
  const profile = profileOf(part);
  const { width, length, bead, grooveDepth } = profile;
  const end = Math.min(length, lie.upTo ?? length);
  const edge = lie.above === 'bead' ? width : 0;
  const inward = (depth: number) => (lie.above === 'bead' ? width - depth : depth);
  const shapes: Shape[] = [area(outline(end, width, end < length), 'outline', 'wood')];
  if (bead > 0)
    shapes.push(area(stroke(at(0, inward(bead)), at(end, inward(bead))), 'bead-line', 'none', 'fine'));
  if (grooveDepth > 0)
    shapes.push(
      area(
        stroke(at(0, inward(grooveDepth)), at(end, inward(grooveDepth))),
        'groove-floor',
        'none',
        'hidden',
      ),
    );
  for (const { place, from, to, depth } of mortisesOf(part)) {
    const [a, b] = (place === 'top') === (lie.leftEnd === 'top') ? [from, to] : [length - to, length - from];
    if (a >= end) continue;
    const chosen = highlight === undefined || highlight === place;
    shapes.push(
      area(
        rectangle(a, edge, Math.min(b, end), inward(depth)),
        'mortise',
        chosen && highlight !== undefined ? 'waste' : 'none',
        chosen && highlight !== undefined ? 'cut' : 'hidden',
        place,
      ),
    );
  }
  shapes.push(...endNames(part, lie, end));
  return shapes;
}

/** Both ends by name: clear of the mortises where only one end is drawn, and never higher than the stock is wide. */
function endNames(part: PlanPart, lie: StileLie, end: number): Shape[] {
  const { width, length } = profileOf(part);
  const whole = end >= length;
  const y = width * (whole ? 0.5 : lie.above === 'bead' ? 0.14 : 0.86);
  const within = width * (whole ? 0.62 : 0.24);
  const [left, right] = lie.leftEnd === 'top' ? (['top', 'bottom'] as const) : (['bottom', 'top'] as const);
  const clear = (at: 'top' | 'bottom') =>
    whole
      ? Math.max(
          length * 0.02,
          ...mortisesOf(part).map(({ place, to }) => (place === at ? to + width * 0.2 : 0)),
        )
      : end * 0.03;
  return [
    label(say(`drawing.${left}`), at(clear(left), y), 'end-name', 'large', 'start', within),
    ...(whole
      ? [label(say(`drawing.${right}`), at(length - clear(right), y), 'end-name', 'large', 'end', within)]
      : []),
  ];
}

/** The stile's mortises, each from its own end; mid ones from the bottom end. */
function mortisesOf(part: PlanPart): { place: string; from: number; to: number; depth: number }[] {
  const mortise = stageOf(part, 'mortise');
  const depth = drawn(mortise?.settings.depthFromEdge);
  return (mortise?.places ?? []).map(({ at: place, settings }) => ({
    place,
    from: drawn(settings.start),
    to: drawn(settings.stop),
    depth,
  }));
}

/** A rectangle, or one with a break line where the rest of the length is left out. */
export function outline(end: number, width: number, broken: boolean): Path {
  if (!broken) return rectangle(0, 0, end, width);
  const tooth = width * 0.06;
  return polygon([
    at(0, 0),
    at(end, 0),
    at(end - tooth, width * 0.35),
    at(end + tooth, width * 0.65),
    at(end, width),
    at(0, width),
  ]);
}
