import type { Lie } from '../plan/face-seen.ts';
import { placeEnd, type PlaceName } from '../plan/place-name.ts';
import type { PlanPart } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import type { Path, Shape } from '../drawing/model.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { stageOf } from '../plan/stage-of.ts';
import { area, at, label, polygon, stroke } from '../drawing/shapes.ts';

/** How a stile lies in a drawing: its length along x, one end at the left. */
export interface StileLie extends Lie {
  /** Drawn from x = 0 up to here, with a break beyond; the whole length when not given. In lengths of the stile. */
  readonly upTo?: number;
  /** A stretch that is left out before the place worked on, so that both it and the end can be drawn large. */
  readonly leftOut?: { readonly from: number; readonly to: number };
}

/** How much of white stands for a stretch left out, in widths of the member. */
const GAP = 0.16;

/** Where a length from the left end is drawn, and where the break before it stands; null where nothing is left out before it. */
export function placed(lie: StileLie, width: number, along: number): { x: number; brokenAt: number | null } {
  const { leftOut } = lie;
  if (leftOut === undefined || along <= leftOut.from) return { x: along, brokenAt: null };
  const gap = width * GAP;
  return { x: along - (leftOut.to - leftOut.from) + gap, brokenAt: leftOut.from + gap / 2 };
}

/** How far a stile that lies so is drawn. */
export function drawnEnd(part: PlanPart, lie: StileLie): number {
  const { width, length } = profileOf(part);
  return placed(lie, width, Math.min(length, lie.upTo ?? length)).x;
}

/** A stile lying on its edge or flat: outline, bead line, groove, mortises, and both ends named. */
export function stileBlank(part: PlanPart, lie: StileLie, highlight?: PlaceName): Shape[] {
  const { width, length, bead, grooveDepth } = profileOf(part);
  const end = Math.min(length, lie.upTo ?? length);
  const edge = lie.above === 'bead' ? width : 0;
  const inward = (depth: number) => (lie.above === 'bead' ? width - depth : depth);
  const x = (along: number) => placed(lie, width, along).x;
  const { leftOut } = lie;
  const pieces =
    leftOut === undefined
      ? [[0, end] as const]
      : [[0, leftOut.from] as const, [leftOut.to + 1e-9 * length, end] as const];
  const shapes: Shape[] = [];
  for (const [from, to] of pieces) {
    const [low, high] = [x(from), x(to)];
    shapes.push(area(member(low, high, width, { left: from > 0, right: to < length }), 'outline', 'wood'));
    if (bead > 0)
      shapes.push(area(stroke(at(low, inward(bead)), at(high, inward(bead))), 'bead-line', 'none', 'fine'));
    if (grooveDepth > 0)
      shapes.push(
        area(
          stroke(at(low, inward(grooveDepth)), at(high, inward(grooveDepth))),
          'groove-floor',
          'none',
          'hidden',
        ),
      );
    for (const mortise of mortisesOf(part)) {
      const [a, b] =
        placeEnd(mortise.place) === lie.leftEnd
          ? [mortise.from, mortise.to]
          : [length - mortise.to, length - mortise.from];
      if (a >= to || b <= from) continue;
      const chosen = highlight === mortise.place;
      shapes.push(
        area(
          cutPocket(x(Math.max(a, from)), x(Math.min(b, to)), edge, inward(mortise.depth), {
            left: a < from,
            right: b > to,
          }),
          'mortise',
          chosen ? 'waste' : 'none',
          chosen ? 'cut' : 'hidden',
          mortise.place,
        ),
      );
    }
  }
  shapes.push(...endNames(part, lie, end));
  return shapes;
}

/** A pocket in an edge; open where a break cuts it off. */
function cutPocket(
  left: number,
  right: number,
  edge: number,
  floor: number,
  cut: { readonly left: boolean; readonly right: boolean },
): Path {
  const corners = [at(left, edge), at(left, floor), at(right, floor), at(right, edge)];
  if (cut.left) return { ...polygon(corners.slice(1)), open: true };
  if (cut.right) return { ...polygon(corners.slice(0, 3)), open: true };
  return polygon([at(left, edge), at(right, edge), at(right, floor), at(left, floor)]);
}

/** Both ends by name, never higher than the stock is wide: clear of the mortises; on a thin strip above it. */
function endNames(part: PlanPart, lie: StileLie, end: number): Shape[] {
  const { width, length } = profileOf(part);
  const whole = end >= length && lie.leftOut === undefined;
  const thin = whole && width < length * THIN;
  const [left, right] = lie.leftEnd === 'top' ? (['top', 'bottom'] as const) : (['bottom', 'top'] as const);
  if (thin)
    return [
      label(say(`drawing.${left}`), at(0, width + length * THIN * 0.6), 'end-name-beside', 'large', 'start'),
      label(
        say(`drawing.${right}`),
        at(length, width + length * THIN * 0.6),
        'end-name-beside',
        'large',
        'end',
      ),
    ];
  const y = width * (whole ? 0.5 : lie.above === 'bead' ? 0.14 : 0.86);
  const within = width * (whole ? 0.62 : 0.26);
  const clear = (at: 'top' | 'bottom') =>
    whole
      ? Math.max(
          length * 0.02,
          ...mortisesOf(part).map(({ place, to }) => (place === at ? to + width * 0.2 : 0)),
        )
      : width * 0.06;
  const across = lie.leftOut === undefined ? {} : { across: lie.leftOut.from - width * 0.1 };
  const names = [
    label(say(`drawing.${left}`), at(clear(left), y), 'end-name', 'large', 'start', within, across),
  ];
  if (end >= length)
    names.push(
      label(
        say(`drawing.${right}`),
        at(placed(lie, width, length).x - clear(right), whole ? y : width * 0.5),
        'end-name',
        'large',
        'end',
        within,
      ),
    );
  return names;
}

/** Narrower than this share of its length a whole stile is a strip too thin to be written on. */
const THIN = 0.06;

/** A mortise as it is drawn. */
export interface DrawnMortise {
  readonly place: PlaceName;
  readonly from: number;
  readonly to: number;
  readonly depth: number;
}

/** The stile's mortises, each from its own end; mid ones from the bottom end. */
function mortisesOf(part: PlanPart): DrawnMortise[] {
  const mortise = stageOf(part, 'mortise');
  if (mortise === undefined) return [];
  const depth = drawn(mortise.settings.depthFromEdge);
  return mortise.places.map(({ at: place, settings }) => ({
    place,
    from: drawn(settings.start),
    to: drawn(settings.stop),
    depth,
  }));
}

/** The same, all from the bottom end. */
export function mortisesFromBottom(part: PlanPart): DrawnMortise[] {
  const { length } = profileOf(part);
  return mortisesOf(part).map((each) =>
    placeEnd(each.place) === 'top' ? { ...each, from: length - each.to, to: length - each.from } : each,
  );
}

/** A stretch of a member, with a break line at each side where the rest is left out. */
export function member(
  from: number,
  to: number,
  width: number,
  broken: { readonly left: boolean; readonly right: boolean },
): Path {
  const tooth = width * 0.06;
  const teeth = (x: number) => [at(x - tooth, width * 0.35), at(x + tooth, width * 0.65)];
  return polygon([
    at(from, 0),
    at(to, 0),
    ...(broken.right ? teeth(to) : []),
    at(to, width),
    at(from, width),
    ...(broken.left ? teeth(from).reverse() : []),
  ]);
}
