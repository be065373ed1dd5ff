import Flatten from '@flatten-js/core';
import { expect } from 'vitest';
import type { PlanPart } from '#core/plan/plan.ts';
import { num, set } from './machined-faces.ts';

const { Arc, Point, Polygon, Segment } = Flatten;

/** Where the arch stands in the door, from its left edge and the stiles' bottom end; the opening's height is that of its flats. */
interface Standing {
  readonly middle: number;
  readonly flats: number;
  readonly opening: number;
  readonly sight: number;
  readonly depth: number;
}

/** A head: sides, flats and arc, from the arc's pivot and radius and the half width of what lies below it. */
function headed(standing: {
  x: number;
  bottom: number;
  flats: number;
  half: number;
  pivot: number;
  radius: number;
}) {
  const { x, bottom, flats, half, pivot, radius } = standing;
  const centre = new Point(x, flats - pivot);
  const from = Math.asin(Math.min(1, pivot / radius));
  const [left, right] = [x - radius * Math.cos(from), x + radius * Math.cos(from)];
  const corners = [
    new Point(left, flats),
    new Point(x - half, flats),
    new Point(x - half, bottom),
    new Point(x + half, bottom),
    new Point(x + half, flats),
    new Point(right, flats),
  ];
  const polygon = new Polygon();
  polygon.addFace([
    ...corners
      .slice(1)
      .map((to, k) => new Segment(corners[k] ?? to, to))
      .filter(({ length }) => length > 0),
    new Arc(centre, radius, from, Math.PI - from, true),
  ]);
  return { polygon, centre, chord: right - left };
}

/** The segment of a circle over a chord so far from its centre. */
function segmentArea(radius: number, fromCentre: number): number {
  const angle = 2 * Math.acos(fromCentre / radius);
  return (radius * radius * (angle - Math.sin(angle))) / 2;
}

/** Points round a polygon, its arcs among them. */
function around(polygon: InstanceType<typeof Polygon>) {
  return [...polygon.edges].flatMap(({ shape }) =>
    shape instanceof Arc || shape instanceof Segment
      ? [0.03, 0.25, 0.5, 0.75, 0.97].flatMap((share) => shape.pointAtLength(shape.length * share) ?? [])
      : [],
  );
}

/** The arch over its opening: what chord, rise and radius say, about one pivot with the panel's head, which lies between sight edge and groove floor. */
export function assembleArch(
  rail: PlanPart,
  panel: PlanPart,
  { middle, flats, opening, sight, depth }: Standing,
): void {
  const [arch, cutout] = [set(rail, 'arch'), set(panel, 'cutout')];
  const [radius, pivot, rise, chord] = [arch.radius, arch.pivot, arch.rise, arch.chord].map(num) as [
    number,
    number,
    number,
    number,
  ];
  const hold = (num(panel.width) - sight) / 2;
  const bottom = flats - opening;
  const low = { x: middle, bottom: bottom - hold };
  const opened = headed({ x: middle, bottom, flats, half: sight / 2, pivot, radius });
  const sawn = headed({
    ...low,
    flats: low.bottom + num(cutout.sideHeight),
    half: num(cutout.width) / 2,
    pivot: num(cutout.pivot),
    radius: num(cutout.radius),
  });
  const floor = headed({
    x: middle,
    bottom: bottom - depth,
    flats: flats + depth,
    half: sight / 2 + depth,
    pivot: pivot + depth,
    radius: radius + depth,
  });

  expect(opened.polygon.box.ymax - flats).toBeCloseTo(rise, 6);
  expect(opened.chord).toBeCloseTo(chord, 6);
  expect(num(arch.arcLength)).toBeCloseTo(2 * radius * Math.asin(Math.min(1, chord / (2 * radius))), 5);
  expect(opened.polygon.area()).toBeCloseTo(sight * opening + segmentArea(radius, pivot), 5);

  // One trammel pivot for rail and panel, the panel's arc larger by what it is held.
  expect(Math.hypot(sawn.centre.x - opened.centre.x, sawn.centre.y - opened.centre.y)).toBeLessThan(
    1e-9 * opening,
  );
  expect(num(cutout.radius) - radius).toBeCloseTo(hold, 9);
  expect(num(cutout.centre)).toBeCloseTo(num(panel.width) / 2, 9);
  expect(sawn.chord).toBeCloseTo(num(cutout.chord), 5);
  expect(2 * num(cutout.flat) + num(cutout.chord)).toBeCloseTo(num(panel.width), 5);
  expect(sawn.polygon.box.ymax - sawn.polygon.box.ymin).toBeCloseTo(num(panel.length), 6);
  const area =
    num(cutout.width) * num(cutout.sideHeight) + segmentArea(num(cutout.radius), num(cutout.pivot));
  expect(Math.abs(sawn.polygon.area() / area - 1)).toBeLessThan(1e-9);

  for (const point of around(opened.polygon)) expect(sawn.polygon.contains(point)).toBe(true);
  for (const point of around(sawn.polygon)) expect(floor.polygon.contains(point)).toBe(true);
}
