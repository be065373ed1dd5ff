import { looseStage } from '../loose-plan.ts';
import { expect } from 'vitest';
import type { PlanDoor, PlanPart } from '#core/plan/plan.ts';
import { assembleArch } from './assemble-arch.ts';
import {
  areaOf,
  box,
  differing,
  find,
  num,
  partOf,
  railFace,
  set,
  shared,
  shift,
  type Spot,
  stileFace,
} from './machined-faces.ts';

/** What kinds of door were put together, so that none is missed by chance. */
export interface Tally {
  made: number;
  arched: number;
  semicircles: number;
  plain: number;
  shallow: number;
  midRails: number;
  /** Outer rails whose haunch reaches the groove's floor, stops short of it, or is gone, the groove being as shallow as that. */
  haunchHome: number;
  haunchShort: number;
  haunchGone: number;
}

export const noDoors = (): Tally => ({
  made: 0,
  arched: 0,
  semicircles: 0,
  plain: 0,
  shallow: 0,
  midRails: 0,
  haunchHome: 0,
  haunchShort: 0,
  haunchGone: 0,
});

/**
 * Puts a door together from its printed settings alone, as machined polygons, by geometry libraries that share no code
 * with core: straight faces by one, arcs by another. x from the door's left edge as built, y from the stiles' bottom
 * end, horns on. Only the haunch's clearance, which no setting is, is told as it was ordered.
 */
export function assemble(door: PlanDoor, tally: Tally, haunchClearance: string): void {
  const [left, right, bottom, top] = ['stile-left', 'stile-right', 'rail-bottom', 'rail-top'].map((name) =>
    partOf(door, name),
  ) as [PlanPart, PlanPart, PlanPart, PlanPart];
  const mids = door.parts.filter(({ part }) => part.startsWith('rail-mid'));
  const trim = looseStage(door, 'trim')?.settings ?? {};
  const [horn, length, s] = [num(trim.horn), num(left.length), num(left.width)];
  const both = (each: string, one: string, other: string) =>
    trim[each] === undefined ? num(trim[one]) + num(trim[other]) : 2 * num(trim[each]);
  const width = num(trim.finishedWidth) + both('trimEachSide', 'trimLeft', 'trimRight');
  const height = num(trim.finishedHeight) + both('trimEachEnd', 'trimBottom', 'trimTop');
  /** What doubles lose of an area of this size. */
  const near = 1e-9 * width * height;
  expect(length).toBeCloseTo(height + 2 * horn, 9);
  const t = num(set(bottom, 'shoulder').stop);
  const b = find(left, 'bead') === undefined ? 0 : num(set(left, 'bead').bead);
  const inset = s - b - t;
  const face = stileFace(left, mids.length);
  expect(stileFace(right, mids.length)).toEqual(face);
  const heights = door.values.sightHeights.map(num);
  const sight = num(door.values.sightWidth);

  const bases = [horn];
  for (const [k, rail] of [bottom, ...mids].entries())
    bases.push((bases[k] ?? 0) + num(rail.width) + (heights[k] ?? 0));
  const rails = [bottom, ...mids, top];
  const topY = bases.at(-1) ?? 0;
  expect(topY).toBeCloseTo(length - horn - num(top.width), 9);
  const railFaces = rails.map((rail, k) =>
    shift(railFace(rail, rail !== top, rail !== bottom), inset, bases[k] ?? 0),
  );
  const members = [face, face.map(([x, y]): Spot => [width - x, y]), ...railFaces];

  // No overlap on the face: every pair shares no area.
  for (const [k, one] of members.entries())
    for (const other of members.slice(k + 1)) expect(shared(one, other)).toBeLessThan(near);
  // No gap, and the outside is the door as built with the stiles' horns, their bead ripped off.
  const openings = heights.map((each, k) => {
    const from = (bases[k] ?? 0) + num(rails[k]?.width);
    return box(s, from, s + sight, from + each);
  });
  const outside = [box(0, horn, width, horn + height)];
  if (horn > 0)
    outside.push(
      ...[0, width - s + b].flatMap((x) => [
        box(x, 0, x + s - b, horn),
        box(x, length - horn, x + s - b, length),
      ]),
    );
  expect(differing([...members, ...openings], outside)).toBeLessThan(near);
  const covered = [...members, ...openings].reduce((sum, each) => sum + areaOf(each), 0);
  expect(Math.abs(covered - outside.reduce((sum, each) => sum + areaOf(each), 0))).toBeLessThan(near);

  mitresMeet(b, s, face, railFaces, rails, bases);
  tenonsFit(left, rails, bases, inset, { s, b, t, length, near });

  throughTheThickness(left, rails);

  const d = num((find(left, 'groove') ?? set(left, 'slot')).depth);
  for (const rail of [bottom, top]) haunchFills(rail, { s, b, t, d, near }, num(haunchClearance), tally);

  const panels = door.parts.filter(({ part }) => part.startsWith('panel'));
  expect(panels).toHaveLength(heights.length);
  for (const [k, panel] of panels.entries()) {
    const hold = (num(panel.width) - sight) / 2;
    const side = num(find(panel, 'cutout')?.sideHeight ?? panel.length);
    expect((side - (heights[k] ?? 0)) / 2).toBeCloseTo(hold, 9);
    expect(hold).toBeGreaterThan(0);
    expect(hold).toBeLessThanOrEqual(d);
  }
  const head = panels.at(-1);
  const arch = find(top, 'arch');
  if (arch !== undefined && head !== undefined) {
    assembleArch(top, head, {
      middle: width / 2,
      flats: topY,
      opening: heights.at(-1) ?? 0,
      sight,
      depth: d,
    });
    expect(inset + num(arch.springing)).toBeCloseTo(width / 2 - num(arch.chord) / 2, 9);
    expect(inset + num(arch.centre)).toBeCloseTo(width / 2, 9);
    tally.arched += 1;
    if (num(arch.pivot) === 0) tally.semicircles += 1;
  }
  tally.made += 1;
  if (b === 0) tally.plain += 1;
  if (d <= b) tally.shallow += 1;
  if (mids.length > 0) tally.midRails += 1;
}

/** The mitre cut on the stile and the one cut on the rail are one and the same line, from shoulder line to sight edge. */
function mitresMeet(
  b: number,
  s: number,
  stile: readonly Spot[],
  railFaces: readonly (readonly Spot[])[],
  rails: readonly PlanPart[],
  bases: readonly number[],
): void {
  if (b === 0) return;
  const ends: [Spot, Spot][] = [];
  for (const [k, rail] of rails.entries()) {
    const base = bases[k] ?? 0;
    const over = base + num(rail.width);
    if (k > 0)
      ends.push([
        [s - b, base + b],
        [s, base],
      ]);
    if (k < rails.length - 1)
      ends.push([
        [s - b, over - b],
        [s, over],
      ]);
  }
  expect(ends).toHaveLength(2 * (rails.length - 1));
  const near = (spots: readonly Spot[], [x, y]: Spot) =>
    spots.some(([px, py]) => Math.hypot(px - x, py - y) < 1e-9 * (1 + Math.abs(y)));
  const every = railFaces.flat();
  for (const spot of ends.flat()) {
    expect(near(stile, spot)).toBe(true);
    expect(near(every, spot)).toBe(true);
  }
}

/** Every tenon in its mortise: nowhere outside it, alike free at both its edges, the clearance short of its bottom. */
function tenonsFit(
  stile: PlanPart,
  rails: readonly PlanPart[],
  bases: readonly number[],
  inset: number,
  { s, b, t, length, near }: { s: number; b: number; t: number; length: number; near: number },
): void {
  const mortise = looseStage(stile, 'mortise');
  const floor = s - num(mortise?.settings.depthFromEdge);
  const rooms: number[] = [];
  for (const [k, rail] of rails.entries()) {
    const [tenon, base] = [set(rail, 'tenon'), bases[k] ?? 0];
    const inner = num(tenon.innerHeight);
    const outer = num(tenon.outerHeight ?? tenon.innerHeight);
    const [below, above] = k === rails.length - 1 ? [inner, outer] : [outer, inner];
    const [low, high] = [base + below, base + num(rail.width) - above];
    expect(high - low).toBeCloseTo(num(tenon.width), 9);
    const at = k === 0 ? 'bottom' : k === rails.length - 1 ? 'top' : `mid-${k}`;
    const place = mortise?.places?.find((each) => each.at === at)?.settings;
    const [start, stop] = [num(place?.start), num(place?.stop)];
    const [from, to] = at === 'top' ? [length - stop, length - start] : [start, stop];
    const hole = box(floor, from, s - b, to);
    const tongue = box(inset, low, inset + t, high);
    expect(areaOf(tongue) - shared(tongue, hole)).toBeLessThan(near);
    expect(low - from).toBeCloseTo(to - high, 9);
    rooms.push(low - from);
  }
  expect(inset - floor).toBeGreaterThanOrEqual(-1e-9);
  for (const room of rooms) expect(room).toBeCloseTo(rooms[0] ?? Number.NaN, 9);
}

/**
 * The haunch fills what the groove leaves open beside the tenon, past the bead that was cut away, all but a slot along the
 * groove's floor as wide as its clearance: it closes where there is none, and touches no floor where there is one.
 */
function haunchFills(
  rail: PlanPart,
  { s, b, t, d, near }: { s: number; b: number; t: number; d: number; near: number },
  clearance: number,
  tally: Tally,
): void {
  const [haunch, tenon] = [set(rail, 'haunch'), set(rail, 'tenon')];
  const long = t - num(tenon.outerStop);
  expect(num(haunch.length)).toBeCloseTo(long, 9);
  expect(haunch.height).toBe(tenon.outerHeight);
  const high = num(haunch.height);
  if (d - b < 1e-9) {
    expect(haunch.length).toBe('0');
    return;
  }
  const open = box(s - d, 0, s - b, high);
  const slot = box(s - d, 0, s - d + Math.min(clearance, d - b), high);
  const wood = box(s - b - long, 0, s - b, high);
  const filled = [wood, slot].filter((each) => areaOf(each) > near);
  expect(differing([open], filled)).toBeLessThan(near);
  expect(shared(wood, slot)).toBeLessThan(near);
  if (haunch.length === '0') {
    expect(d - b).toBeLessThanOrEqual(clearance + 1e-9);
    tally.haunchGone += 1;
    return;
  }
  const room = d - b - num(haunch.length);
  expect(room).toBeCloseTo(clearance, 9);
  expect(room > 1e-9).toBe(clearance > 0);
  tally[clearance > 0 ? 'haunchShort' : 'haunchHome'] += 1;
}

/** Seen end on: groove, mortise and tenon lie centred in one thickness, and the tenon is as thick as the groove is wide. */
function throughTheThickness(stile: PlanPart, rails: readonly PlanPart[]): void {
  const [mortise, thickness] = [set(stile, 'mortise'), num(stile.thickness)];
  const groove = find(stile, 'groove') ?? set(stile, 'slot');
  expect(2 * num(groove.fence ?? groove.cutterHeight) + num(groove.width)).toBeCloseTo(thickness, 9);
  expect(2 * num(mortise.fence) + num(mortise.chisel)).toBeCloseTo(thickness, 9);
  expect(num(mortise.chisel)).toBeLessThanOrEqual(num(groove.width));
  for (const rail of rails) {
    const [shoulder, cheek] = [set(rail, 'shoulder'), set(rail, 'cheek')];
    expect(shoulder.height).toBe(cheek.height);
    expect(2 * num(cheek.height) + num(cheek.thickness)).toBeCloseTo(num(rail.thickness), 9);
    expect(cheek.thickness).toBe(groove.width);
    expect(rail.thickness).toBe(stile.thickness);
  }
}
