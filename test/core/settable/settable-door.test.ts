import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { PlanDoor, Settings } from '#core/plan/plan.ts';
import { settableDoor, settablePlan } from '#core/settable/settable-door.ts';
import { paperStep, readStep, screenStep, stepOf } from '#core/settable/step.ts';
import { doorInUnits } from '#core/settable/in-units.ts';
import { length } from '#core/length/length.ts';
import { looseStage } from '../../loose-plan.ts';

function doorOf(units: 'in' | 'mm', fields: Record<string, unknown>, quantity = 1): readonly PlanDoor[] {
  const planned = planFile({
    format: 1,
    job: 'x',
    units,
    ways: { strip: 'rip' },
    doors: [{ mark: 'A', quantity, ...fields }],
  });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return planned.value.doors;
}

function at(door: PlanDoor, units: 'in' | 'mm', text: string) {
  const step = readStep(text, units);
  if (step === null) throw new Error(text);
  const shown = settableDoor(door, step);
  const part = (name: string) => {
    const found = shown.parts.find((each) => each.part === name);
    if (found === undefined) throw new Error(name);
    return found;
  };
  const set = (name: string, stage: string, place?: string): Settings => {
    const found = looseStage(name === 'door' ? shown : part(name), stage);
    const settings =
      place === undefined ? found?.settings : found?.places?.find((each) => each.at === place)?.settings;
    if (settings === undefined) throw new Error(`${name} ${stage}`);
    return settings;
  };
  return { shown, part, set };
}

/** An opening of 14 49/64 with stiles of 2 17/64: S = 14 49/64 − 4 34/64 + 6/16 = 10 39/64. */
const ODD = {
  opening: { width: '14 49/64', height: '22 33/64' },
  thickness: '25/32',
  stile: { width: '2 17/64' },
  bottomRail: { width: '2 51/64' },
  tenon: { length: '1 9/32', outerSetback: '3/8', innerSetback: '1/4', haunchClearance: '1/32' },
  panel: { thickness: '33/64', clearance: '1/16' },
  midRails: [{ width: '2 33/64', centre: '10' }],
};

test('a door in inches at 1/16, worked by hand', () => {
  const [exact] = doorOf('in', ODD);
  if (exact === undefined) throw new Error('no door');
  const { shown, part, set } = at(exact, 'in', '1/16');
  // S 10 39/64 → 10 5/8; tenon 1 9/32 lies midway, so up: 1 5/16. Rails 10 5/8 + 2 5/8.
  expect(shown.values.shoulderToShoulder).toBe('10 5/8');
  for (const name of ['rail-bottom', 'rail-mid-1', 'rail-top']) {
    expect(part(name).length).toBe('13 1/4');
    expect(set(name, 'shoulder').stop).toBe('1 5/16');
    expect(set(name, 'tenon').innerStop).toBe('1 5/16');
    expect(set(name, 'mitre')).toMatchObject({ sightEdge: '1 1/2', shoulderLine: '1 5/16', tilt: 45 });
  }
  // Haunch 3/8 − 3/16 − 1/32 = 5/32 down to 1/8; outer stop 1 5/16 − 1/8.
  expect(set('rail-bottom', 'haunch')).toEqual({ length: '1/8', height: '3/8' });
  expect(set('rail-bottom', 'tenon').outerStop).toBe('1 3/16');
  // Wall (25/32 − 1/4)/2 = 17/64: at home on 1/64, whatever the step.
  expect(set('rail-bottom', 'cheek')).toEqual({ height: '17/64', thickness: '1/4' });
  expect(set('stile-left', 'groove')).toMatchObject({
    fence: '17/64',
    width: '1/4',
    depth: '3/8',
  });
  expect(set('stile-left', 'bead')).toEqual({ bead: '3/16', fillet: '5/64', cutterHeight: '17/64' });
  expect(part('stile-left').thickness).toBe('25/32');
  // Stile 2 17/64 → 2 1/4, the fence one bead less. Length 22 33/64 + 1 → 23 1/2.
  expect(part('stile-left')).toMatchObject({ width: '2 1/4', length: '23 1/2' });
  expect(set('stile-left', 'strip').fence).toBe('2 1/16');
  // Bottom mitre 1/2 + 2 51/64 = 3 19/64 down to 3 1/4, its shoulder line 3 7/64 to 3 1/16.
  expect(set('stile-left', 'mitre-bottom')).toMatchObject({ sightEdge: '3 1/4', shoulderLine: '3 1/16' });
  expect(set('stile-left', 'strip', 'bottom').run).toBe('3 1/16');
  // Mid rail: below 10 1/2 − 1 33/128 = 9 31/128; from the top of a stile of 23 1/2: 14 33/128 down to 14 1/4.
  expect(set('stile-left', 'mitre-mid-1-lower')).toMatchObject({
    sightEdge: '14 1/4',
    shoulderLine: '14 1/16',
  });
  // Above 10 1/2 + 1 33/128 = 11 97/128 down to 11 3/4. Notch from 9 55/128 up, to 11 73/128 down.
  expect(set('stile-left', 'mitre-mid-1-upper').sightEdge).toBe('11 3/4');
  expect(set('stile-left', 'notch-mid-1')).toMatchObject({ from: '9 7/16', to: '11 9/16', length: '2 1/8' });
  // Bottom mortise: start 1/2 + 3/8 − 1/32 = 27/32 down, stop 3 19/64 − 3/16 − 1/4 + 1/32 = 2 57/64 up.
  // It is 2 1/8 long, in plunges of 1/4: 9.
  expect(set('stile-left', 'mortise', 'bottom')).toMatchObject({
    start: '13/16',
    stop: '2 15/16',
    length: '2 1/8',
    plunges: 9,
  });
  // Depth 3/16 + 1 9/32 + 1/16 = 1 17/32 up; from the floor 1 5/32 up.
  expect(set('stile-left', 'mortise')).toMatchObject({
    depthFromEdge: '1 9/16',
    depthFromGroove: '1 3/16',
    chisel: '1/4',
  });
  expect(set('stile-left', 'mortise').fence).toBe('17/64');
  // Tenon 2 51/64 → 2 13/16 less 3/8 and 7/16.
  expect(set('rail-bottom', 'tenon')).toMatchObject({ width: '2', outerHeight: '3/8', innerHeight: '7/16' });
  // Panel 10 5/8 − 3/8 + 2 × 5/16 = 10 7/8. Tongue 1/4 − 1/64; 33/64 less 15/64.
  expect(part('panel-1').width).toBe('10 7/8');
  expect(set('panel-1', 'raise')).toEqual({ tongue: '15/64', depth: '9/32', band: '1' });
  // Trim 1/16 each; finished 14 41/64 → 14 5/8.
  expect(set('door', 'trim')).toMatchObject({ trimEachSide: '1/16', finishedWidth: '14 5/8', horn: '1/2' });
});

test('a door in millimetres at 0.5 and at 0.1, worked by hand', () => {
  const fields = {
    opening: { width: '375.3', height: '571.6' },
    thickness: '19.25',
    stile: { width: '57.2' },
    tenon: { length: '32.3', outerSetback: '10', innerSetback: '6', haunchClearance: '0.8' },
  };
  const [exact] = doorOf('mm', fields);
  if (exact === undefined) throw new Error('no door');
  const half = at(exact, 'mm', '0.5');
  // S = 375.3 − 114.4 + 10 = 270.9 → 271; stop 32.3 → 32.5; rails 271 + 65.
  expect(half.shown.values.shoulderToShoulder).toBe('271');
  expect(half.part('rail-top').length).toBe('336');
  expect(half.set('rail-top', 'mitre')).toMatchObject({ sightEdge: '37 1/2', shoulderLine: '32 1/2' });
  // Wall (19.25 − 6)/2 = 6.625 down to 6.6; 19.25 − 13.2 = 6.05: nearest 6.1, and what is pared for it no less.
  expect(half.set('stile-left', 'groove')).toMatchObject({ fence: '6 3/5', width: '6 1/10' });
  expect(half.set('rail-top', 'shoulder').height).toBe('6 3/5');
  expect(half.set('stile-left', 'pare').width).toBe('6 1/10');
  expect(half.set('stile-left', 'bead').fillet).toBe('1 3/5');
  // Haunch 10 − 5 − 0.8 = 4.2 down to 4.
  expect(half.set('rail-top', 'tenon').outerStop).toBe('28 1/2');
  // Stile 57.2 → 57, its strip at 52. Tongue 6.05 − 0.4 = 5.65 down to 5.6, depth 12 − 5.6.
  expect(half.part('stile-left').width).toBe('57');
  expect(half.set('stile-left', 'strip').fence).toBe('52');
  expect(half.set('panel', 'raise')).toMatchObject({ tongue: '5 3/5', depth: '6 2/5' });
  // Panel 271 − 10 + 2 × 8.5 = 278.
  expect(half.part('panel').width).toBe('278');
  const tenth = at(exact, 'mm', '0.1');
  expect(tenth.part('rail-top').length).toBe('335 1/2');
  expect(tenth.set('rail-top', 'shoulder').stop).toBe('32 3/10');
  expect(tenth.part('panel').width).toBe('277 9/10');
});

test('a mortise opens for a tenon of a rail that is milled wider, and is deep enough for one that is longer', () => {
  // A rail of 2 51/64 is milled 2 13/16; pared to the line at 3 1/4 its tenon begins at 3 1/4 − 2 13/16 + 3/8 = 13/16, before
  // 1/2 + 3/8 − 0. A tenon of 1 1/32 is cut 1 1/16, and with a bead of 5/32 reaches 1 7/32: more than 1 3/16.
  const [exact] = doorOf('in', {
    ...ODD,
    bead: '5/32',
    tenon: { length: '1 1/32', outerSetback: '3/8', innerSetback: '1/4', haunchClearance: '1/32' },
    mortise: { clearance: '0', endPlay: '0' },
  });
  if (exact === undefined) throw new Error('no door');
  const { set } = at(exact, 'in', '1/16');
  expect(looseStage(exact.parts[0] ?? exact, 'mortise')?.places?.[0]?.settings.start).toBe('7/8');
  expect(set('stile-left', 'mortise', 'bottom').start).toBe('13/16');
  expect(looseStage(exact.parts[0] ?? exact, 'mortise')?.settings.depthFromEdge).toBe('1 3/16');
  expect(set('stile-left', 'mortise').depthFromEdge).toBe('1 1/4');
});

test('nothing is rounded to nothing or under it, and tools, words, counts and figures with six decimals stay', () => {
  const [exact] = doorOf('in', { ...ODD, midRails: [], arch: { rise: '1 3/4', flat: '3/4' } });
  if (exact === undefined) throw new Error('no door');
  const whole = settableDoor(exact, stepOf('in', length(100)));
  for (const part of whole.parts) expect([part.length, part.width]).not.toContain('0');
  const { set } = at(exact, 'in', '1/16');
  const before = (name: string, stage: string) =>
    looseStage(exact.parts.find(({ part }) => part === name) ?? exact, stage)?.settings;
  expect(set('rail-top', 'arch').arcLength).toBe(before('rail-top', 'arch')?.arcLength);
  expect(set('stile-left', 'strip').reach).toBe(before('stile-left', 'strip')?.reach);
  expect(set('stile-left', 'mitre-top').fromEnd).toBe('top');
  expect(set('door', 'glue')).toEqual(looseStage(exact, 'glue')?.settings);
});

test('the same door is the same object again, doors of one mark share their stages, codes and notes stay their own', () => {
  const [one, two] = doorOf('in', ODD, 2);
  if (one === undefined || two === undefined) throw new Error('no doors');
  const step = paperStep('in');
  const [first, second] = [settableDoor(one, step), settableDoor(two, step)];
  expect(settableDoor(one, paperStep('in'))).toBe(first);
  expect(first.parts[0]?.stages).toBe(second.parts[0]?.stages);
  expect(second.parts.map(({ code }) => code)).toEqual(two.parts.map(({ code }) => code));
  expect(second.door).toBe('A-2');
  expect(settablePlan({ format: 1, id: 'x', job: 'x', units: 'in', doors: [one] }, step).doors).toEqual([
    first,
  ]);
});

test('a screen in another measure takes that measure’s step, of exactly converted values', () => {
  const [exact] = doorOf('in', ODD);
  if (exact === undefined) throw new Error('no door');
  const inMm = doorInUnits(exact, 'in', 'mm');
  // 2 17/64 in × 25.4.
  expect(inMm.parts[0]?.width).toBe('57 35/64');
  const shown = settableDoor(inMm, screenStep('mm', { denominator: 64, places: 1 }));
  // S 10 39/64 in = 269.478125 → 269.5; stop 32.54375 → 32.5; rail 334.5.
  expect(shown.parts.find(({ part }) => part === 'rail-top')?.length).toBe('334 1/2');
  expect(doorInUnits(exact, 'in', 'mm')).toBe(inMm);
  expect(screenStep('mm', { denominator: 64, places: 1, half: true }).usual.valueOf()).toBe(0.5);
  expect(screenStep('decimals', { denominator: 16, places: 1 }).usual.valueOf()).toBe(0.001);
  expect(screenStep('fractions', { denominator: 16, places: 1 }).fine.valueOf()).toBe(1 / 64);
});
