import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { PlanDoor } from '#core/plan/plan.ts';
import { settableDoor } from '#core/settable/settable-door.ts';
import { readStep, STEPS } from '#core/settable/step.ts';
import { howTo } from '#core/telling/how-to.ts';
import { samples } from '../../samples.ts';
import { compared, minus, multiplied, printed, ratio } from '../exact.ts';
import { only, planned, set } from '../measured/plan-as-cut.ts';

/** One door in settable numbers, some of its rails as thick as they came out. */
function shown(
  units: 'in' | 'mm',
  step: string,
  {
    thickness,
    rails = {},
    groove = 'saw',
  }: { thickness: string; rails?: Readonly<Record<string, string>>; groove?: string },
): PlanDoor {
  const parts = Object.fromEntries(Object.entries(rails).map(([part, is]) => [part, { thickness: is }]));
  const exact = only(planned([{ thickness }], { doors: { 'A-1': { parts } } }, units, { ways: { groove } }));
  const read = readStep(step, units);
  if (read === null) throw new Error(step);
  return settableDoor(exact, read);
}

/** The lines that say how thick it is pared or planed; they come last. */
function linesOf(door: PlanDoor, part: string, kind: 'cheek' | 'haunch'): string[] {
  const stages = door.parts.find((each) => each.part === part)?.stages ?? [];
  const stage = stages.find((each) => each.stage === kind);
  if (stage === undefined) throw new Error(part);
  return howTo(stage).filter((line) => /thick, as wide as/.test(line));
}

test('a slot is as wide as its cutter: of odd stock the haunch is pared to it, and it is said how thick', () => {
  // Wall (49/64 − 1/4)/2 = 33/128 down to 1/4: tenon and mortise 49/64 − 1/2 = 17/64, the slot 1/4.
  const inches = shown('in', '1/32', { thickness: '49/64', groove: 'router' });
  expect(set(inches, 'stile-left', 'slot')).toMatchObject({ width: '1/4', cutterHeight: '1/4' });
  expect(set(inches, 'stile-left', 'pare')).toEqual({ width: '17/64' });
  for (const rail of ['rail-bottom', 'rail-top']) {
    expect(set(inches, rail, 'shoulder').height).toBe('1/4');
    expect(set(inches, rail, 'cheek')).toEqual({ height: '1/4', thickness: '17/64' });
    expect(set(inches, rail, 'haunch')).toMatchObject({ pareTo: '1/4' });
    expect(linesOf(inches, rail, 'haunch')).toEqual([
      'Pare the back of the haunch to 1/4 thick, as wide as its groove.',
    ]);
  }
  // (19.1 − 6)/2 = 6.55 down to 6.5: 19.1 − 13 = 6.1 in a slot of 6.
  const metric = shown('mm', '0.1', { thickness: '19.1', groove: 'router' });
  expect(set(metric, 'stile-left', 'pare')).toEqual({ width: '6 1/10' });
  expect(set(metric, 'rail-top', 'cheek')).toEqual({ height: '6 1/2', thickness: '6 1/10' });
  expect(set(metric, 'rail-top', 'haunch').pareTo).toBe('6');
});

test('nothing is pared of a haunch whose groove is as wide as its tenon is thick', () => {
  // Of 3/4 the walls are 1/4 each; on the saw two passes make the groove of 49/64 as wide as the tenon: 17/64.
  for (const [thickness, groove] of [
    ['3/4', 'router'],
    ['49/64', 'saw'],
  ] as const) {
    const door = shown('in', '1/64', { thickness, groove });
    expect(set(door, 'rail-bottom', 'haunch')).not.toHaveProperty('pareTo');
    expect(linesOf(door, 'rail-bottom', 'haunch')).toEqual([]);
  }
});

test.each<readonly ['in' | 'mm', string, string, Record<string, string>]>([
  // 33/128 off each face would leave 1/4: 17/64 leaves 15/64, a sixty-fourth loose.
  ['in', '3/4', '49/64', { height: '17/64', thickness: '15/64' }],
  // (11/16 − 1/4)/2.
  ['in', '3/4', '11/16', { height: '7/32', thickness: '1/4' }],
  // 65/256: 17/64 would leave 29/128, 3/128 loose. 1/4 leaves 33/128, to be planed to 1/4.
  ['in', '3/4', '97/128', { height: '1/4', thickness: '17/64', pareTo: '1/4' }],
  // 6.65: 6.7 leaves 5.9, a tenth loose.
  ['mm', '19', '19.3', { height: '6 7/10', thickness: '5 9/10' }],
])(
  'in %s a rail between stiles of %s that came out %s has tenons that enter its mortises',
  (units, thickness, is, cheek) => {
    const [step] = STEPS[units];
    const door = shown(units, step, { thickness, rails: { 'rail-top': is } });
    expect(set(door, 'rail-top', 'cheek')).toEqual(cheek);
    expect(set(door, 'rail-top', 'shoulder').height).toBe(cheek.height);
    expect(set(door, 'rail-top', 'haunch')).not.toHaveProperty('pareTo');
    expect(set(door, 'rail-bottom', 'cheek')).not.toHaveProperty('pareTo');
    expect(set(door, 'rail-bottom', 'cheek').height).toBe(units === 'in' ? '1/4' : '6 1/2');
    expect(linesOf(door, 'rail-top', 'cheek')).toEqual(
      cheek.pareTo === undefined ? [] : ['Then plane the tenon to 1/4 thick, as wide as its mortises.'],
    );
  },
);

test.each(['in', 'mm'] as const)(
  'in %s, however thick a rail came out, its tenon enters its mortises no looser than 1/64, or is told to be planed until it does',
  (units) => {
    const loosest = ratio(units === 'in' ? '1/64' : '2/5');
    let planed = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: -16, max: 16 }),
        fc.integer({ min: -32, max: 32 }),
        fc.constantFrom('saw', 'router'),
        fc.constantFrom(...STEPS[units]),
        (stile, rail, groove, step) => {
          const off = (by: number, ways: bigint) =>
            units === 'in'
              ? printed({ n: 3n * 64n + BigInt(by), d: 256n })
              : printed({ n: 19n * ways + BigInt(by), d: ways });
          const [thickness, is] = [off(stile, 20n), off(rail, 20n)];
          const door = shown(units, step, { thickness, groove, rails: { 'rail-top': is } });
          const cheek = set(door, 'rail-top', 'cheek');
          const tenon = minus(ratio(is), multiplied(ratio(cheek.height), 2));
          const pare = ratio(set(door, 'stile-left', 'pare').width);
          if (cheek.pareTo === undefined) {
            expect(compared(tenon, pare)).toBeLessThanOrEqual(0);
            expect(compared(minus(pare, tenon), loosest)).toBeLessThanOrEqual(0);
          } else {
            planed += 1;
            expect(cheek.pareTo).toBe(printed(pare));
            expect(compared(tenon, pare)).toBe(1);
            expect(compared(minus(tenon, pare), loosest)).toBe(-1);
          }
        },
      ),
      { numRuns: samples(60, 2000) },
    );
    // A tenth of a millimetre is fine enough for any stock.
    if (units === 'in') expect(planed).toBeGreaterThan(0);
    else expect(planed).toBe(0);
  },
);
