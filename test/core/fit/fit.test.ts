import { expect, test } from 'vitest';
import { doubtful, jobFit } from '#core/fit/job-fit.ts';
import { type PrintedClosure, printFit } from '#core/fit/print-fit.ts';
import { tellClosure } from '#core/fit/tell-fit.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';
import { readProfile } from '#core/shop/read-profile.ts';
import type { Tolerances } from '#core/shop/shop-profile.ts';
import type { DoorFields } from '../joint/door-fields.ts';

const OPENING = { in: { width: '16', height: '40' }, mm: { width: '400', height: '1000' } };
const MID = { in: { width: '3', centre: '18' }, mm: { width: '75', centre: '450' } };

type Strip = 'notch' | 'rip';

function planned(units: 'in' | 'mm', ...doors: DoorFields[]): Plan {
  return plannedIn('notch', units, ...doors);
}

function plannedIn(strip: Strip, units: 'in' | 'mm', ...doors: DoorFields[]): Plan {
  const plan = planFile({
    format: 1,
    job: 'x',
    units,
    ways: { strip },
    doors: doors.map((fields, k) => ({ mark: 'ABCDEFG'[k], opening: OPENING[units], ...fields })),
  });
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  return plan.value;
}

function tolerances(units: 'in' | 'mm', said: object = {}): Tolerances {
  const read = readProfile({ tolerances: said }, units);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value.tolerances;
}

function closure(plan: Plan, id: string, said: object = {}, part?: string): PrintedClosure {
  const found = printFit(plan, tolerances(plan.units, said)).kinds[0]?.closures.find(
    (each) => each.id === id && (part === undefined || each.parts.includes(part)),
  );
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
}

// Worked by hand with the built-in ±: fence 1/128, stop 1/64, height 1/128, milling 1/64; 0.2, 0.4, 0.2, 0.4. Least and
// most in each unit. What a ripped strip leaves behind the rails hangs on its fence and on the stile's width, what a notch
// leaves on its height alone.
type Worked = readonly [
  id: string,
  exact: string,
  inches: readonly [string, string],
  mm: readonly [string, string],
];
const ALIKE: readonly Worked[] = [
  // No gap; half of each rail's length: ± 1/64.
  ['shoulders', '0', ['-1/64', '1/64'], ['-2/5', '2/5']],
  // Two walls of the groove and two of the tenon: 2/128 + 2/128.
  ['tenon-groove', '0', ['-1/32', '1/32'], ['-4/5', '4/5']],
  // What is left for the chisel is 1/64 or 0.4, and a stop is off by as much.
  ['mitres', '1/64', ['0', '1/32'], ['0', '4/5']],
  // Two shares of the chisel; two stops, the stile's length and the rail's width.
  ['mid-mitres', '1/32', ['-1/32', '3/32'], ['-4/5', '2 2/5']],
  // The panel, two stops, the stile's length, two grooves: 1/64 + 2/64 + 1/64 + 2/128 = 5/64. 3; 0.4 + 0.8 + 0.4 + 0.4.
  ['panel-length', '1/8', ['3/64', '13/64'], ['1', '5']],
  // Two reveals; the stile's length, two stops, two rails' widths: 5/64. 3; 2.
  ['outside-height', '1/8', ['3/64', '13/64'], ['1', '5']],
];
const RIPPED: readonly Worked[] = [
  // Clearance 1/16; depth 1/128, tenon 1/64, fence 1/128, stile 1/64: 6/128. 1.5; 0.2 + 0.4 + 0.2 + 0.4 = 1.2.
  ['mortise-floor', '1/16', ['1/64', '7/64'], ['3/10', '2 7/10']],
  // Haunch clearance 1/32; groove 1/128, fence 1/128, stile 1/64. 0.8; 0.2 + 0.2 + 0.4.
  ['haunch', '1/32', ['0', '1/16'], ['0', '1 3/5']],
  // Two clearances of 1/16; the panel, the rail's length, two stops, two grooves, two fences, two stiles:
  // 1/64 + 1/64 + 2/64 + 2/128 + 2/128 + 2/64 = 8/64. 3; 0.4 + 0.4 + 0.8 + 0.4 + 0.4 + 0.8 = 3.2.
  ['panel-width', '1/8', ['0', '1/4'], ['-1/5', '6 1/5']],
  // Two reveals; the rail's length, two stops, two fences: 4/64. 3; 0.4 + 0.8 + 0.4.
  ['outside-width', '1/8', ['1/16', '3/16'], ['1 2/5', '4 3/5']],
];
const NOTCHED: readonly Worked[] = [
  // Clearance 1/16; depth 1/128, tenon 1/64, notch 1/128: 4/128. 1.5; 0.2 + 0.4 + 0.2 = 0.8.
  ['mortise-floor', '1/16', ['1/32', '3/32'], ['7/10', '2 3/10']],
  // Haunch clearance 1/32; groove 1/128, notch 1/128. 0.8; 0.2 + 0.2.
  ['haunch', '1/32', ['1/64', '3/64'], ['2/5', '1 1/5']],
  // Two clearances of 1/16; the panel, the rail's length, two stops, two grooves, two notches:
  // 1/64 + 1/64 + 2/64 + 2/128 + 2/128 = 6/64. 3; 0.4 + 0.4 + 0.8 + 0.4 + 0.4 = 2.4.
  ['panel-width', '1/8', ['1/32', '7/32'], ['3/5', '5 2/5']],
  // Two reveals; the rail's length, two stops, two stiles, two notches: 1/64 + 2/64 + 2/64 + 2/128 = 6/64.
  // 3; 0.4 + 0.8 + 0.8 + 0.4 = 2.4.
  ['outside-width', '1/8', ['1/32', '7/32'], ['3/5', '5 2/5']],
];

test.each<readonly [Strip, Worked]>([
  ...[...ALIKE, ...RIPPED].map((worked) => ['rip', worked] as const),
  ...[...ALIKE, ...NOTCHED].map((worked) => ['notch', worked] as const),
])('by the way "%s" in inches and in millimetres is what is worked by hand: %s', (strip, worked) => {
  const [id, exact, [least, most], [mmLeast, mmMost]] = worked;
  const inches = closure(plannedIn(strip, 'in', { midRails: [MID.in] }), id);
  expect(inches.exact).toBe(exact);
  expect(inches.worst).toEqual({ least, most });
  expect(closure(plannedIn(strip, 'mm', { midRails: [MID.mm] }), id).worst).toEqual({
    least: mmLeast,
    most: mmMost,
  });
});

test('behind a mid rail it is the notch’s height that counts, however the ends are stripped', () => {
  // Clearance 1/16; depth 1/128, tenon 1/64, notch 1/128.
  for (const strip of ['notch', 'rip'] as const) {
    const plan = plannedIn(strip, 'in', { midRails: [MID.in] });
    expect(closure(plan, 'mortise-floor', {}, 'rail-mid-1').worst).toEqual({ least: '1/32', most: '3/32' });
  }
});

test.each<readonly [Strip, number]>([
  // In 1/64: panel, rail, two stops, two times two halves for grooves and for notches.
  ['notch', 1 + 1 + 4 + 1 + 1],
  // The same with fences for notches, and two stiles.
  ['rip', 1 + 1 + 4 + 1 + 1 + 1 + 1],
])('by the way "%s" likely is the root of the sum of the squares', (strip, squares) => {
  const { likely, exact } = closure(plannedIn(strip, 'in', {}), 'panel-width');
  expect(exact).toBe('1/8');
  const root = Math.sqrt(squares) / 64;
  expect(Number(likely.least)).toBeCloseTo(1 / 8 - root, 6);
  expect(Number(likely.most)).toBeCloseTo(1 / 8 + root, 6);
});

test('a joint that is pared to the line closes while the chisel is left something, and not beyond', () => {
  const plan = planned('in', {});
  expect(closure(plan, 'mitres').verdict).toBe('closes');
  expect(closure(plan, 'mitres', { stop: '1/32' })).toMatchObject({
    verdict: 'unlikely',
    gate: { setting: 'sightEdge' },
  });
});

test('what closes only by luck names the setting whose ± counts most', () => {
  const plan = planned('in', { midRails: [MID.in] });
  expect(closure(plan, 'mid-mitres')).toMatchObject({
    verdict: 'by-luck',
    gate: { part: 'stile-left', stage: 'mitre-mid-1-lower', setting: 'sightEdge' },
  });
  expect(closure(plan, 'mid-mitres', { milling: '1/32' }).gate).toMatchObject({
    stage: 'mill',
    setting: 'length',
  });
  expect(closure(plan, 'tenon-groove')).toMatchObject({
    verdict: 'unlikely',
    gate: { stage: 'cheek', setting: 'height' },
  });
  expect(closure(plan, 'tenon-groove', { fence: '1/64' }).gate).toMatchObject({
    stage: 'groove',
    setting: 'fence',
  });
});

test('a haunch that fills its groove closes only where nothing is ever off', () => {
  const plan = planned('in', { tenon: { haunchClearance: '0' } });
  expect(closure(plan, 'haunch')).toMatchObject({ exact: '0', verdict: 'unlikely' });
  const exactly = { fence: '0', stop: '0', height: '0', milling: '0' };
  expect(closure(plan, 'haunch', exactly)).toMatchObject({ exact: '0', verdict: 'closes' });
});

test('a shop that is never off has no doubt of any door that can be made', () => {
  const plan = planned(
    'in',
    { midRails: [MID.in] },
    { bead: '0' },
    { arch: { rise: '1', flat: '1' } },
    { groove: { depth: '3/16' } },
  );
  const sure = tolerances('in', { fence: '0', stop: '0', height: '0', milling: '0' });
  for (const { closures } of jobFit(plan, sure)) {
    expect(doubtful(closures)).toEqual([]);
    for (const { room, worst } of closures) expect(worst).toEqual({ least: room, most: room });
  }
});

test('a rail cut short keeps the shoulders open, as planned by what was measured', () => {
  const plan = planned('in', {});
  const short = {
    ...plan,
    doors: plan.doors.map((door) => ({
      ...door,
      parts: door.parts.map((part) => (part.part === 'rail-top' ? { ...part, length: '14 3/16' } : part)),
    })),
  };
  const long = plan.doors[0]?.parts.find(({ part }) => part === 'rail-bottom')?.length;
  // 16 − 2 × 2 1/4 + 2 × 3/16 + 2 × 1 1/4 = 14 3/8; half of 3/16 stands open.
  expect(long).toBe('14 3/8');
  expect(closure(short, 'shoulders')).toMatchObject({ exact: '3/32', verdict: 'open' });
});

test('doors that close alike are told once, whatever their sizes', () => {
  const plan = planned(
    'in',
    { quantity: 2 },
    { opening: { width: '18', height: '30' } },
    { midRails: [MID.in] },
  );
  expect(jobFit(plan, tolerances('in')).map(({ doors }) => doors)).toEqual([['A-1', 'A-2', 'B-1'], ['C-1']]);
});

test('a warning says what, by how much, what it needs and what to watch', () => {
  const plan = planned('in', { midRails: [MID.in] });
  const [kind] = jobFit(plan, tolerances('in'));
  const said = doubtful(kind?.closures ?? []).map((each) => tellClosure(each, 'in', 'en').warning);
  expect(said).toEqual([
    'Tenon loose in its groove: do not count on it. Likely −0.022 to 0.022, and it needs 1/128 or less. Watch Bottom rail: blade height, Cut the cheeks, and try it against the part that it goes with.',
    'Wood left to fit a mid rail between its miters: it closes only by luck. At worst −1/32 to 3/32, and it needs 0 or more; likely 0 to 0.063. Watch Left stile: sight edge, Miter below mid rail 1.',
  ]);
});
