import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import polygonClipping from 'polygon-clipping';
import { expect, test } from 'vitest';
import { planFile } from '#core/plan/plan-file.ts';
import type { PlanDoor, PlanPart, Settings } from '#core/plan/plan.ts';
import { randomDoor } from './random-door.ts';

// The door is put together from its printed settings alone, as machined polygons, by geometry libraries that share
// no code with core: straight faces by one, the arc by another. x from the door's left edge as built, y from the stiles' bottom end, horns on.

const { Arc, Point, Polygon, Segment } = Flatten;
type Spot = readonly [number, number];
const NEAR = 1e-6;

/** A printed value as a number, read here independently. */
function num(value: string | number | undefined): number {
  if (typeof value === 'number') return value;
  return (value ?? 'x').split(' ').reduce((sum, run) => {
    const [n = 'x', d = '1'] = run.split('/');
    return sum + Number(n) / Number(d);
  }, 0);
}

const partOf = (door: PlanDoor, name: string): PlanPart => {
  const found = door.parts.find(({ part }) => part === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};
const find = (part: PlanPart, name: string): Settings | undefined =>
  part.stages.find(({ stage }) => stage === name)?.settings;
const set = (part: PlanPart, name: string): Settings => {
  const found = find(part, name);
  if (found === undefined) throw new Error(`${part.part} has no ${name}`);
  return found;
};

/** The area inside a run of corners. */
function areaOf(spots: readonly (readonly [number, number])[]): number {
  return (
    Math.abs(
      spots.reduce((sum, [x, y], k) => {
        const [nx, ny] = spots[(k + 1) % spots.length] ?? [0, 0];
        return sum + x * ny - nx * y;
      }, 0),
    ) / 2
  );
}

/** The area that two faces share. */
function shared(one: readonly Spot[], other: readonly Spot[]): number {
  const ring = (spots: readonly Spot[]): [number, number][][] => [spots.map(([x, y]) => [x, y])];
  return polygonClipping
    .intersection(ring(one), ring(other))
    .reduce((sum, [outer = []]) => sum + areaOf(outer), 0);
}
const shift = (spots: readonly Spot[], dx: number, dy: number): Spot[] =>
  spots.map(([x, y]) => [x + dx, y + dy]);

/** The left stile's face: strips ripped off to the shoulder lines, mitres and notches cut. */
function stileFace(stile: PlanPart, mids: number): Spot[] {
  const [length, width] = [num(stile.length), num(stile.width)];
  if (find(stile, 'strip') === undefined)
    return [
      [0, 0],
      [width, 0],
      [width, length],
      [0, length],
    ];
  const fence = num(set(stile, 'strip').fence);
  const runs = stile.stages.find(({ stage }) => stage === 'strip')?.places ?? [];
  const [bottom, top] = [set(stile, 'mitre-bottom'), set(stile, 'mitre-top')];
  expect(runs.map(({ at, settings }) => [at, settings.run])).toEqual([
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
function railFace(rail: PlanPart, up: boolean, down: boolean): Spot[] {
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

/** The segment of circle that the arch takes out of the top rail, from its chord, rise and radius. */
function archSegment(arch: Settings, middle: number, flats: number) {
  const [half, radius, pivot] = [num(arch.chord) / 2, num(arch.radius), num(arch.pivot)];
  const centre = new Point(middle, flats - pivot);
  const from = Math.atan2(pivot, half);
  const head = new Polygon();
  head.addFace([
    new Arc(centre, radius, from, Math.PI - from, true),
    new Segment(new Point(middle - half, flats), new Point(middle + half, flats)),
  ]);
  return head;
}

function assemble(door: PlanDoor): void {
  const [left, right, bottom, top] = ['stile-left', 'stile-right', 'rail-bottom', 'rail-top'].map((name) =>
    partOf(door, name),
  ) as [PlanPart, PlanPart, PlanPart, PlanPart];
  const mids = door.parts.filter(({ part }) => part.startsWith('rail-mid'));
  const trim = door.stages.find(({ stage }) => stage === 'trim')?.settings ?? {};
  const [horn, length, s] = [num(trim.horn), num(left.length), num(left.width)];
  const width = num(trim.finishedWidth) + 2 * num(trim.trimEachSide);
  const height = num(trim.finishedHeight) + 2 * num(trim.trimEachEnd);
  expect(length).toBeCloseTo(height + 2 * horn, 9);
  const t = num(set(bottom, 'shoulder').stop);
  const b = find(left, 'bead') === undefined ? 0 : num(set(left, 'bead').bead);
  const inset = s - b - t;
  const face = stileFace(left, mids.length);
  expect(stileFace(right, mids.length)).toEqual(face);

  const heights = door.values.sightHeights.map(num);
  let y = horn + num(bottom.width);
  const midFaces = mids.map((mid, k) => {
    y += heights[k] ?? 0;
    const spots = shift(railFace(mid, true, true), inset, y);
    y += num(mid.width);
    return spots;
  });
  const topY = length - horn - num(top.width);
  expect(y + (heights.at(-1) ?? 0)).toBeCloseTo(topY, 9);
  const members = [
    face,
    face.map(([x, py]): Spot => [width - x, py]),
    shift(railFace(bottom, true, false), inset, horn),
    ...midFaces,
    shift(railFace(top, false, true), inset, topY),
  ];

  // No overlap on the face: every pair shares no area. Bead mitres are then one and the same line.
  for (const [k, one] of members.entries())
    for (const other of members.slice(k + 1)) expect(shared(one, other)).toBeLessThan(NEAR);
  // No gap: members and sight openings together are the door as built with the stiles' horns.
  const sight = num(door.values.sightWidth);
  const openings = heights.reduce((sum, each) => sum + each * sight, 0);
  const horns = 4 * horn * (s - b);
  const covered = members.reduce((sum, member) => sum + areaOf(member), 0) + openings;
  expect(Math.abs(covered - (width * height + horns))).toBeLessThan(NEAR);

  // Every tenon in its mortise, alike at both ends of its play, and not to the bottom.
  const mortise = left.stages.find(({ stage }) => stage === 'mortise');
  const place = (at: string) => mortise?.places?.find((each) => each.at === at)?.settings ?? {};
  expect(num(mortise?.settings.depthFromEdge) - b - t).toBeGreaterThanOrEqual(-NEAR);
  const plays = [bottom, top].map((rail, k) => {
    const [tenon, at] = [set(rail, 'tenon'), place(k === 0 ? 'bottom' : 'top')];
    const [from, to] = [horn + num(tenon.outerHeight), horn + num(rail.width) - num(tenon.innerHeight)];
    expect(to - from).toBeCloseTo(num(tenon.width), 9);
    expect(from - num(at.start)).toBeCloseTo(num(at.stop) - to, 9);
    return from - num(at.start);
  });
  let base = horn + num(bottom.width);
  for (const [k, mid] of mids.entries()) {
    base += heights[k] ?? 0;
    const [tenon, at] = [set(mid, 'tenon'), place(`mid-${k + 1}`)];
    const [from, to] = [base + num(tenon.innerHeight), base + num(mid.width) - num(tenon.innerHeight)];
    expect(to - from).toBeCloseTo(num(tenon.width), 9);
    expect(from - num(at.start)).toBeCloseTo(num(at.stop) - to, 9);
    plays.push(from - num(at.start));
    base += num(mid.width);
  }
  for (const play of plays) expect(play).toBeCloseTo(plays[0] ?? 0, 9);
  expect(plays[0]).toBeGreaterThanOrEqual(0);

  // The haunch fills what the groove leaves open beside the tenon, past the bead that was cut away.
  const d = num((find(left, 'groove') ?? {}).depth);
  for (const rail of [bottom, top]) {
    const haunch = set(rail, 'haunch');
    expect(num(haunch.length)).toBeCloseTo(Math.max(0, d - b), 9);
    expect(num(set(rail, 'tenon').outerStop) + num(haunch.length)).toBeCloseTo(t, 9);
    expect(haunch.height).toBe(set(rail, 'tenon').outerHeight);
  }

  // The panel's edge lies between sight edge and groove floor all round, the arch's arc with it.
  const panels = door.parts.filter(({ part }) => part.startsWith('panel'));
  for (const [k, panel] of panels.entries()) {
    const hold = (num(panel.width) - sight) / 2;
    const cutout = find(panel, 'cutout');
    const side = cutout === undefined ? num(panel.length) : num(cutout.sideHeight);
    expect((side - (heights[k] ?? 0)) / 2).toBeCloseTo(hold, 9);
    expect(hold).toBeGreaterThan(0);
    expect(hold).toBeLessThanOrEqual(d);
    if (cutout === undefined) continue;
    const arch = set(top, 'arch');
    expect(num(cutout.radius) - num(arch.radius)).toBeCloseTo(hold, 9);
    expect(num(cutout.pivot) - num(arch.pivot)).toBeCloseTo(hold, 9);
    expect(2 * num(cutout.flat) + num(cutout.chord)).toBeCloseTo(num(panel.width), 5);
    const half = num(cutout.chord) / 2;
    expect(Math.hypot(half, num(cutout.pivot))).toBeCloseTo(num(cutout.radius), 5);
  }

  // The arch: springing to springing it is what chord, rise and radius say, and stays inside the rail.
  const arch = find(top, 'arch');
  if (arch === undefined) return;
  const segment = archSegment(arch, width / 2, topY);
  expect(segment.box.ymax - topY).toBeCloseTo(num(arch.rise), 6);
  expect(inset + num(arch.springing)).toBeCloseTo(width / 2 - num(arch.chord) / 2, 9);
  expect(inset + num(arch.centre)).toBeCloseTo(width / 2, 9);
  const [radius, angle] = [num(arch.radius), 2 * Math.asin(num(arch.chord) / (2 * num(arch.radius)))];
  expect(Math.abs(segment.area())).toBeCloseTo((radius * radius * (angle - Math.sin(angle))) / 2, 6);
  expect(num(arch.arcLength)).toBeCloseTo(radius * angle, 5);
}

test('random doors, put together from their printed settings alone, close without gap or overlap', () => {
  let made = 0;
  fc.assert(
    fc.property(randomDoor, (fields) => {
      const planned = planFile({ format: 1, job: 'x', units: 'in', doors: [fields] });
      if (!planned.ok) return;
      made += 1;
      for (const door of planned.value.doors) assemble(door);
    }),
    { numRuns: 300 },
  );
  expect(made).toBeGreaterThan(100);
});

test('inches and the same millimetres give the same door', () => {
  const mm = (value: unknown): unknown => {
    if (typeof value === 'string' && /^[\d ./]+$/.test(value))
      return `${Math.round(num(value) * 16) * 127}/80`;
    if (Array.isArray(value)) return value.map(mm);
    if (typeof value === 'object' && value !== null)
      return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, mm(each)]));
    return value;
  };
  let made = 0;
  fc.assert(
    fc.property(randomDoor, (fields) => {
      const inSixteenths = {
        ...fields,
        mortise: { clearance: '1/16', endPlay: '0' },
        groove: { width: '5/16', depth: fields.groove.depth },
      };
      const metric = {
        ...(mm(inSixteenths) as object),
        mark: 'A',
        reveal: '127/80',
        panel: { thickness: '381/40', clearance: '127/80' },
      };
      const [inch, millimetre] = [
        planFile({ format: 1, job: 'x', units: 'in', doors: [inSixteenths] }),
        planFile({ format: 1, job: 'x', units: 'mm', doors: [metric] }),
      ];
      if (!inch.ok || !millimetre.ok) return;
      made += 1;
      const [one, other] = [inch.value.doors[0], millimetre.value.doors[0]];
      for (const [k, part] of (one?.parts ?? []).entries()) {
        expect(num(part.length) * 25.4).toBeCloseTo(num(other?.parts[k]?.length), 6);
        expect(num(part.width) * 25.4).toBeCloseTo(num(other?.parts[k]?.width), 6);
        expect(part.stages.map(({ stage }) => stage)).toEqual(
          other?.parts[k]?.stages.map(({ stage }) => stage),
        );
      }
    }),
    { numRuns: 150 },
  );
  expect(made).toBeGreaterThan(30);
});

test('the order of mid rails in the file makes no difference', () => {
  fc.assert(
    fc.property(randomDoor, (fields) => {
      const plan = (midRails: readonly unknown[]) =>
        planFile({ format: 1, job: 'x', units: 'in', doors: [{ ...fields, midRails }] });
      expect(plan(fields.midRails.toReversed())).toEqual(plan(fields.midRails));
    }),
    { numRuns: 100 },
  );
});
