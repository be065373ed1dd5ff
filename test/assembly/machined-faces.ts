import { looseStage } from '../loose-plan.ts';
import polygonClipping from 'polygon-clipping';
import { expect } from 'vitest';
import type { PlanDoor, PlanPart, Settings } from '#core/plan/plan.ts';

// Faces of a door's members as its printed settings have them machined. Shares no code with core.

export type Spot = readonly [number, number];

/** A printed value as a number, read here independently. */
export function num(value: string | number | undefined): number {
  if (typeof value === 'number') return value;
  return (value ?? 'x').split(' ').reduce((sum, run) => {
    const [n = 'x', d = '1'] = run.split('/');
    return sum + Number(n) / Number(d);
  }, 0);
}

export const partOf = (door: PlanDoor, name: string): PlanPart => {
  const found = door.parts.find(({ part }) => part === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};
export const find = (part: PlanPart, name: string): Settings | undefined => looseStage(part, name)?.settings;
export const set = (part: PlanPart, name: string): Settings => {
  const found = find(part, name);
  if (found === undefined) throw new Error(`${part.part} has no ${name}`);
  return found;
};

/** The area inside a run of corners. */
export function areaOf(spots: readonly (readonly [number, number])[]): number {
  return (
    Math.abs(
      spots.reduce((sum, [x, y], k) => {
        const [nx, ny] = spots[(k + 1) % spots.length] ?? [0, 0];
        return sum + x * ny - nx * y;
      }, 0),
    ) / 2
  );
}

const ring = (spots: readonly Spot[]): [number, number][][] => [spots.map(([x, y]) => [x, y])];

/** The area that is in the one or in the other, but not in both; each made of several faces. */
export function differing(one: readonly (readonly Spot[])[], other: readonly (readonly Spot[])[]): number {
  const whole = (faces: readonly (readonly Spot[])[]) => polygonClipping.union(faces.map(ring));
  return polygonClipping
    .xor(whole(one), whole(other))
    .reduce(
      (sum, [outer = [], ...holes]) =>
        sum + areaOf(outer) - holes.reduce((cut, hole) => cut + areaOf(hole), 0),
      0,
    );
}

/** A rectangle from its left, bottom, right and top. */
export function box(left: number, bottom: number, right: number, top: number): Spot[] {
  return [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ];
}

/** The area that two faces share. */
export function shared(one: readonly Spot[], other: readonly Spot[]): number {
  return polygonClipping
    .intersection(ring(one), ring(other))
    .reduce((sum, [outer = []]) => sum + areaOf(outer), 0);
}
export const shift = (spots: readonly Spot[], dx: number, dy: number): Spot[] =>
  spots.map(([x, y]) => [x + dx, y + dy]);

/** How far in from the outer edge the bead is gone behind the outer rails, and how far from each end: ripped, or notched from the sight edge. */
function stripped(stile: PlanPart): { fence: number; runs: readonly (readonly [string, unknown])[] } | null {
  const rip = looseStage(stile, 'strip');
  if (rip !== undefined)
    return {
      fence: num(rip.settings.fence),
      runs: (rip.places ?? []).map(({ at, settings }) => [at, settings.run]),
    };
  if (find(stile, 'notch-bottom') === undefined) return null;
  const [bottom, top] = [set(stile, 'notch-bottom'), set(stile, 'notch-top')];
  expect([bottom.fromEnd, bottom.from, top.fromEnd, top.from]).toEqual(['bottom', '0', 'top', '0']);
  expect([bottom.length, top.length, top.height]).toEqual([bottom.to, top.to, bottom.height]);
  return {
    fence: num(stile.width) - num(bottom.height),
    runs: [
      ['bottom', bottom.to],
      ['top', top.to],
    ],
  };
}

/** The left stile's face: the bead gone to the shoulder lines, mitres and notches cut. */
export function stileFace(stile: PlanPart, mids: number): Spot[] {
  const [length, width] = [num(stile.length), num(stile.width)];
  const strip = stripped(stile);
  if (strip === null)
    return [
      [0, 0],
      [width, 0],
      [width, length],
      [0, length],
    ];
  const { fence, runs } = strip;
  const [bottom, top] = [set(stile, 'mitre-bottom'), set(stile, 'mitre-top')];
  expect(runs).toEqual([
    ['bottom', bottom.shoulderLine],
    ['top', top.shoulderLine],
  ]);
  const spots: Spot[] = [
    [0, 0],
    [fence, 0],
    [fence, num(bottom.shoulderLine)],
    [width, num(bottom.sightEdge)],
  ];
  for (let k = 1; k <= mids; k += 1) {
    const [lower, upper, notch] = [
      set(stile, `mitre-mid-${k}-lower`),
      set(stile, `mitre-mid-${k}-upper`),
      set(stile, `notch-mid-${k}`),
    ];
    expect([lower.fromEnd, upper.fromEnd, notch.fromEnd]).toEqual(['top', 'bottom', 'bottom']);
    expect(length - num(lower.shoulderLine)).toBeCloseTo(num(notch.from), 9);
    expect(num(upper.shoulderLine)).toBeCloseTo(num(notch.to), 9);
    spots.push(
      [width, length - num(lower.sightEdge)],
      [fence, num(notch.from)],
      [fence, num(notch.to)],
      [width, num(upper.sightEdge)],
    );
  }
  return [
    ...spots,
    [width, length - num(top.sightEdge)],
    [fence, length - num(top.shoulderLine)],
    [fence, length],
    [0, length],
  ];
}

/** A rail's face between its shoulders, its beaded edges mitred; `up` and `down` tell which edges are beaded. */
export function railFace(rail: PlanPart, up: boolean, down: boolean): Spot[] {
  const [length, width, t] = [num(rail.length), num(rail.width), num(set(rail, 'shoulder').stop)];
  const mitre = find(rail, 'mitre');
  const sight = mitre === undefined ? t : num(mitre.sightEdge);
  const b = mitre === undefined ? 0 : num(mitre.height);
  const low: Spot[] = down
    ? [
        [t, b],
        [sight, 0],
        [length - sight, 0],
        [length - t, b],
      ]
    : [
        [t, 0],
        [length - t, 0],
      ];
  const high: Spot[] = up
    ? [
        [length - t, width - b],
        [length - sight, width],
        [sight, width],
        [t, width - b],
      ]
    : [
        [length - t, width],
        [t, width],
      ];
  return [...low, ...high].filter(
    ([x, y], k, all) => k === 0 || x !== all[k - 1]?.[0] || y !== all[k - 1]?.[1],
  );
}
