import { stageOf } from '#core/plan/stage-of.ts';
import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { DoorFields } from './door-fields.ts';

const OPENING = {
  in: { width: '16', height: '30' },
  mm: { width: '400', height: '750' },
};

/** Haunch length and outer stop of the bottom rail; the top rail's are the same. */
function haunchOf(fields: DoorFields, units: 'in' | 'mm' = 'in') {
  const planned = planFile(
    { format: 1, job: 'x', units, doors: [{ mark: 'A', opening: OPENING[units], ...fields }] },
    { why: 'en' },
  );
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const [bottom, top] = ['rail-bottom', 'rail-top'].map((name) => {
    const part = planned.value.doors[0]?.parts.find((each) => each.part === name);
    if (part === undefined) throw new Error(`no ${name}`);
    const [haunch, tenon] = [stageOf(part, 'haunch'), stageOf(part, 'tenon')];
    return {
      length: haunch?.settings.length,
      outerStop: tenon?.settings.outerStop,
      reason: haunch?.why?.length?.reason,
    };
  });
  expect(top).toEqual(bottom);
  return bottom;
}

test('the haunch of the built-in door ends its clearance short of the groove’s floor', () => {
  // 3/8 − 3/16 − 1/32 = 5/32, and 1 1/4 − 5/32 = 1 3/32.
  expect(haunchOf({})).toMatchObject({ length: '5/32', outerStop: '1 3/32' });
  // 10 − 5 − 0.8 = 4.2, and 32 − 4.2 = 27.8.
  expect(haunchOf({}, 'mm')).toMatchObject({ length: '4 1/5', outerStop: '27 4/5' });
});

test.each([
  // d − b − hc of a groove 3/8 deep and a bead of 3/16; the stop is 1 1/4 less it.
  ['0', '3/16', '1 1/16'],
  ['1/16', '1/8', '1 1/8'],
  ['3/16', '0', '1 1/4'],
  ['1/4', '0', '1 1/4'],
])('a haunch clearance of %s leaves %s of haunch', (haunchClearance, length, outerStop) => {
  expect(haunchOf({ tenon: { haunchClearance } })).toMatchObject({ length, outerStop });
});

test('a groove no deeper than the bead leaves no haunch, whatever its clearance', () => {
  expect(haunchOf({ groove: { depth: '3/16' } })).toMatchObject({ length: '0', outerStop: '1 1/4' });
});

test('the reason of the haunch’s length names its clearance', () => {
  expect(haunchOf({ tenon: { haunchClearance: '1/16' } })?.reason).toBe(
    'groove 3/8 − bead 3/16 − haunch clearance 1/16, if anything is left: 1/8',
  );
});

test('a haunch clearance of less than 0 is a fault that says where', () => {
  const planned = planFile({
    format: 1,
    job: 'x',
    units: 'in',
    doors: [{ mark: 'A', opening: OPENING.in, tenon: { haunchClearance: '-1/32' } }],
  });
  expect(planned.ok ? [] : planned.faults.map(({ path, code }) => `${path} ${code}`)).toEqual([
    'doors[0].tenon.haunchClearance negative',
  ]);
});
