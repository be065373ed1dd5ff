import fc from 'fast-check';
import { expect, test } from 'vitest';
import { half, less, type Length, sum } from '#core/length/length.ts';
import { printLength } from '#core/length/print-length.ts';
import { readPrinted } from '#core/length/read-printed.ts';
import type { PlanDoor } from '#core/plan/plan.ts';
import { randomDoor, ways } from '../../assembly/random-door.ts';
import { samples } from '../../samples.ts';
import { doorAsCut, only, planned, set } from '../measured/plan-as-cut.ts';

const MID = { midRails: [{ width: '3', centre: '14' }] };

test('a stile longer by 1/8 has it in its top horn: what is measured from the top end is 1/8 more', () => {
  const door = doorAsCut({ 'stile-left': { length: '31 1/8' } }, MID);
  const stile = 'stile-left';
  expect(door.parts.find(({ part }) => part === stile)?.length).toBe('31 1/8');
  expect(set(door, stile, 'mill').length).toBe('31 1/8');
  // Horn 1/2 + rail 2 1/4 + 1/8; less the bead of 3/16.
  expect(set(door, stile, 'mitre-top')).toMatchObject({ sightEdge: '2 7/8', shoulderLine: '2 11/16' });
  // Stile 31 1/8 − (1/2 + 14 − 1 1/2).
  expect(set(door, stile, 'mitre-mid-1-lower').sightEdge).toBe('18 1/8');
  // Horn 1/2 + setback 3/8 − end play 1/32 + 1/8.
  expect(set(door, stile, 'mortise', 'top')).toMatchObject({
    start: '31/32',
    stop: '2 15/32',
    length: '1 1/2',
  });
  // From the bottom end nothing moves, and the other stile is as specified.
  expect(set(door, stile, 'mitre-bottom').sightEdge).toBe('3 1/4');
  expect(set(door, stile, 'mitre-mid-1-upper').sightEdge).toBe('16');
  expect(set(door, stile, 'mortise', 'mid-1').start).toBe('13 13/32');
  expect(set(door, 'stile-right', 'mitre-top').sightEdge).toBe('2 3/4');
});

test('in millimetres a stile of 783 for 784', () => {
  const door = doorAsCut({ 'stile-right': { length: '783' } }, {}, 'mm');
  // 12 + 57 − 1.
  expect(set(door, 'stile-right', 'mitre-top').sightEdge).toBe('68');
  expect(set(door, 'stile-right', 'mitre-bottom').sightEdge).toBe('82');
});

test('a rail longer by 1/16 has 1/32 more tenon at each end, and all that is set from its ends follows', () => {
  const arch = { rise: '1', flat: '3/4' };
  const door = doorAsCut({ 'rail-top': { length: '14 7/16' } }, { arch });
  expect(set(door, 'rail-top', 'shoulder').stop).toBe('1 9/32');
  expect(set(door, 'rail-top', 'mitre')).toMatchObject({ sightEdge: '1 15/32', shoulderLine: '1 9/32' });
  // The haunch stays 3/8 − 3/16 − 1/32 = 5/32.
  expect(set(door, 'rail-top', 'tenon')).toMatchObject({ innerStop: '1 9/32', outerStop: '1 1/8' });
  expect(set(door, 'rail-top', 'haunch').length).toBe('5/32');
  // Springing 1 9/32 + 3/16 + 3/4; the center half of 14 7/16. Chord 11 1/2 − 1 1/2 as before.
  expect(set(door, 'rail-top', 'arch')).toMatchObject({ springing: '2 7/32', centre: '7 7/32', chord: '10' });
  expect(set(door, 'stile-left', 'mortise').depthFromEdge).toBe('1 1/2');
});

test('a groove measured wider fits its tenons by job, by door and by both stiles', () => {
  // (3/4 − 17/64)/2 = 31/128.
  const fit = (measured: object, groove: object = {}) => {
    const door = only(planned([{ groove }], measured));
    const { height } = set(door, 'rail-top', 'shoulder');
    const { height: cheek, thickness } = set(door, 'rail-top', 'cheek');
    return [height, cheek, thickness, set(door, 'stile-left', 'pare').width];
  };
  const stiles = { 'stile-left': { grooveWidth: '17/64' }, 'stile-right': { grooveWidth: '17/64' } };
  const wide = ['31/128', '31/128', '17/64', '17/64'];
  expect(fit({ grooveWidth: '17/64' })).toEqual(wide);
  expect(fit({ grooveWidth: [{ of: '1/4', is: '17/64' }] })).toEqual(wide);
  expect(fit({ doors: { 'A-1': { grooveWidth: '17/64' } } })).toEqual(wide);
  expect(fit({ doors: { 'A-1': { parts: stiles } } })).toEqual(wide);
  // Narrower than 5/16: (3/4 − 19/64)/2 = 29/128.
  const narrow = ['29/128', '29/128', '19/64', '19/64'];
  expect(fit({ grooveWidth: '19/64' }, { width: '5/16' })).toEqual(narrow);
});

test('a stile’s own groove is pared as wide as it is, and tenons fit the narrower of the two', () => {
  const wider = doorAsCut({ 'stile-left': { grooveWidth: '17/64' } });
  expect([set(wider, 'stile-left', 'pare').width, set(wider, 'stile-right', 'pare').width]).toEqual([
    '17/64',
    '1/4',
  ]);
  expect(set(wider, 'rail-bottom', 'cheek')).toEqual({ height: '1/4', thickness: '1/4' });
  const narrower = doorAsCut({ 'stile-left': { grooveWidth: '15/64' } });
  expect(set(narrower, 'rail-bottom', 'cheek')).toEqual({ height: '33/128', thickness: '15/64' });
  expect(set(narrower, 'rail-bottom', 'groove').fence).toBe('1/4');
});

test('a rail thinner than its door still has tenons for the stiles’ grooves', () => {
  // (11/16 − 1/4)/2 = 7/32.
  const door = doorAsCut({ 'rail-top': { thickness: '11/16' } });
  expect(set(door, 'rail-top', 'cheek')).toEqual({ height: '7/32', thickness: '1/4' });
  expect(set(door, 'rail-bottom', 'cheek')).toEqual({ height: '1/4', thickness: '1/4' });
});

test('a rail’s own groove makes no tenon, but the tongue of the panels that it holds', () => {
  const door = doorAsCut(
    { 'rail-mid-1': { grooveWidth: '15/64' } },
    {
      midRails: [
        { width: '3', centre: '9' },
        { width: '3', centre: '18' },
      ],
    },
  );
  expect(set(door, 'rail-mid-1', 'cheek').thickness).toBe('1/4');
  // 15/64 less the sliding fit of 1/64; the panel of 1/2 loses the rest.
  expect(set(door, 'panel-1', 'raise')).toMatchObject({ tongue: '7/32', depth: '9/32' });
  expect(set(door, 'panel-2', 'raise').tongue).toBe('7/32');
  expect(set(door, 'panel-3', 'raise').tongue).toBe('15/64');
});

test('a panel’s own thickness is what its raise begins from, its own width and length what its head is sawn from', () => {
  const arch = { rise: '1', flat: '3/4' };
  const door = doorAsCut({ panel: { thickness: '7/16', width: '12 1/16', length: '25 17/32' } }, { arch });
  expect(set(door, 'panel', 'mill')).toEqual({ length: '25 17/32', width: '12 1/16', thickness: '7/16' });
  // 7/16 − (1/4 − 1/64).
  expect(set(door, 'panel', 'raise').depth).toBe('13/64');
  expect(set(door, 'panel', 'cutout')).toMatchObject({
    width: '12 1/16',
    height: '25 17/32',
    sideHeight: '24 17/32',
    centre: '6 1/32',
  });
});

const read = (value: string | number | undefined): Length => readPrinted(value ?? '', 'in');
const error = fc.integer({ min: -31, max: 31 }).map((n) => `${n}/64`);
const sixtyFourths = (text: string): Length => {
  const [n, d] = text.replace('-', '').split('/');
  const size = readPrinted(`${n ?? '0'}/${d ?? '1'}`, 'in');
  return text.startsWith('-') ? less(size, size, size) : size;
};

/** All that is set from the top end of a stile, as heights above its bottom end. */
function fromTop(door: PlanDoor, part: string): string[] {
  const stile = door.parts.find((each) => each.part === part);
  if (stile === undefined) throw new Error(part);
  const above = (value: string) => printLength(less(read(stile.length), read(value)));
  return stile.stages.flatMap((stage) => {
    const settings: Readonly<Record<string, string | number | undefined>> = stage.settings;
    const places: readonly { at: string; settings: Readonly<Record<string, string | number | undefined>> }[] =
      stage.places ?? [];
    // The notch of an end begins at that end, wherever it is, and goes as far as the shoulder line.
    const names = stage.stage === 'notch-top' ? ['to'] : ['sightEdge', 'shoulderLine'];
    const own = settings.fromEnd === 'top' ? names.map((name) => settings[name]) : [];
    const top = places.filter(({ at }) => at === 'top').flatMap((place) => Object.entries(place.settings));
    const ends = top.filter(([name]) => ['start', 'stop', 'run'].includes(name)).map(([, value]) => value);
    return [...own, ...ends].map((value) => `${stage.stage} ${above(String(value))}`);
  });
}

test('however long a stile came out, its joints stand at the same height above its bottom end', () => {
  let made = 0;
  fc.assert(
    fc.property(randomDoor, ways, error, (fields, inWays, off) => {
      const before = planned([fields], {}, 'in', { ways: inWays });
      if (!before.ok) return;
      const length = sum(read(only(before).parts[0]?.length), sixtyFourths(off));
      const now = planned(
        [fields],
        { doors: { 'A-1': { parts: { 'stile-left': { length: printLength(length) } } } } },
        'in',
        { ways: inWays },
      );
      if (!now.ok) {
        expect(faultsOnLength(now)).toBe(true);
        return;
      }
      made += 1;
      expect(fromTop(only(now), 'stile-left')).toEqual(fromTop(only(before), 'stile-left'));
      expect(only(now).parts.slice(1)).toEqual(only(before).parts.slice(1));
    }),
    { numRuns: samples(60, 2000) },
  );
  expect(made).toBeGreaterThan(10);
});

function faultsOnLength(plan: { readonly faults: readonly { readonly path: string }[] }): boolean {
  return plan.faults.every(({ path }) => path === 'doors.A-1.parts.stile-left.length');
}

test('a rail’s shoulders are as far apart as the door’s, however long it came out', () => {
  let moved = 0;
  fc.assert(
    fc.property(randomDoor, error, (fields, off) => {
      const before = planned([fields], {});
      if (!before.ok) return;
      const length = sum(read(set(only(before), 'rail-top', 'mill').length), sixtyFourths(off));
      const now = only(
        planned([fields], { doors: { 'A-1': { parts: { 'rail-top': { length: printLength(length) } } } } }),
      );
      const rail = now.parts.find(({ part }) => part === 'rail-top');
      const stop = read(set(now, 'rail-top', 'shoulder').stop);
      expect(printLength(less(read(rail?.length), stop, stop))).toBe(now.values.shoulderToShoulder);
      if (rail?.length !== printLength(length)) return;
      moved += 1;
      const planned0 = read(set(only(before), 'rail-top', 'shoulder').stop);
      expect(printLength(less(stop, planned0).abs() as Length)).toBe(
        printLength(half(sixtyFourths(off).abs() as Length)),
      );
      expect(less(stop, planned0, read(fields.mortise.clearance)).compare(0)).toBeLessThanOrEqual(0);
    }),
    { numRuns: samples(60, 2000) },
  );
  expect(moved).toBeGreaterThan(10);
});

const groove = fc.option(fc.constantFrom('1/4', '17/64', '9/32'), { nil: undefined });
const ofStile = fc.option(fc.constantFrom('15/64', '1/4', '17/64', '9/32'), { nil: undefined });

test('whatever the grooves measure, both walls and the tenon make the rail’s thickness, and it goes into both stiles', () => {
  fc.assert(
    fc.property(groove, groove, ofStile, ofStile, (job, door, left, right) => {
      const part = (grooveWidth: string | undefined) => (grooveWidth === undefined ? {} : { grooveWidth });
      const plan = only(
        planned([{}], {
          ...part(job),
          doors: {
            'A-1': { ...part(door), parts: { 'stile-left': part(left), 'stile-right': part(right) } },
          },
        }),
      );
      const pares = ['stile-left', 'stile-right'].map((stile) => read(set(plan, stile, 'pare').width));
      for (const rail of ['rail-bottom', 'rail-top']) {
        const { height, thickness } = set(plan, rail, 'cheek');
        expect(set(plan, rail, 'shoulder').height).toBe(height);
        expect(printLength(sum(read(height), read(height), read(thickness)))).toBe('3/4');
        expect(pares.every((pare) => pare.compare(read(thickness)) >= 0)).toBe(true);
        expect(pares.some((pare) => pare.equals(read(thickness)))).toBe(true);
      }
      expect(pares.map(printLength)).toEqual([left ?? door ?? job ?? '1/4', right ?? door ?? job ?? '1/4']);
    }),
    { numRuns: samples(60, 500) },
  );
});
