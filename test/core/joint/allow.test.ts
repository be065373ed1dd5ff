import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { Allowed, PlanDoor } from '#core/plan/plan.ts';
import type { DoorFields } from './door-fields.ts';

const OPENING = { in: { width: '16', height: '40' }, mm: { width: '400', height: '1000' } };
const MID = { in: { width: '3', centre: '18' }, mm: { width: '75', centre: '450' } };

function planned(units: 'in' | 'mm', fields: DoorFields = {}, strip: 'notch' | 'rip' = 'notch'): PlanDoor {
  const door = { mark: 'A', opening: OPENING[units], midRails: [MID[units]], ...fields };
  const plan = planFile({ format: 1, job: 'x', units, ways: { strip }, doors: [door] }, { why: 'en' });
  const made = plan.ok ? plan.value.doors[0] : undefined;
  if (made === undefined) throw new Error(plan.ok ? 'no door' : JSON.stringify(plan.faults));
  return made;
}

/** By how much a setting may be off, less and more: "stile-left/mortise@top/start". */
function room(door: PlanDoor, where: string): readonly [string, string] | undefined {
  const { less, more } = allowAt(door, where) ?? {};
  return less === undefined || more === undefined ? undefined : [less, more];
}

function allowAt(door: PlanDoor, where: string): Allowed | undefined {
  const [, part, stageId, at, name = ''] = /^([^/]+)\/([^@/]+)(?:@([^/]+))?\/(.+)$/.exec(where) ?? [];
  const stage = door.parts.find((each) => each.part === part)?.stages.find((each) => each.stage === stageId);
  const places: readonly { readonly at: string; readonly allow?: PlanDoor['stages'][number]['allow'] }[] =
    stage?.places ?? [];
  return (at === undefined ? stage?.allow : places.find((each) => each.at === at)?.allow)?.[name];
}

// Worked by hand from the built-in fields of each unit. In inches: stile 2 1/4, bead 3/16, tenon 1 1/4, clearance 1/16,
// end play 1/32, setbacks 3/8 and 1/4, groove 1/4 × 3/8, haunch clearance 1/32, panel clearance 1/16, reveal 1/16.
// In millimetres: 57, 5, 32, 1.5, 0.8, 10 and 6, 6 × 10, 0.8, 1.5, 1.5.
test.each([
  // 2 1/4 − 3/16 − 1 1/4 − 1/16 − 1/16 − 1/8; 57 − 5 − 32 − 1.5 − 1.5 − 3.
  ['stile-left/mortise/depthFromEdge', ['1/16', '9/16'], ['1 1/2', '14']],
  // 3/8 − 1/16 − 1/32 − 1/8; 10 − 1.5 − 0.8 − 3.
  ['stile-right/mortise@bottom/start', ['5/32', '1/32'], ['4 7/10', '4/5']],
  ['stile-left/mortise@top/start', ['5/32', '1/32'], ['4 7/10', '4/5']],
  // 1/4 − 1/32; 6 − 0.8.
  ['stile-left/mortise@mid-1/start', ['7/32', '1/32'], ['5 1/5', '4/5']],
  ['stile-left/mortise@mid-1/stop', ['1/32', '7/32'], ['4/5', '5 1/5']],
  ['stile-left/mortise@top/stop', ['1/32', '7/32'], ['4/5', '5 1/5']],
  // The haunch’s clearance comes before the panel’s.
  ['stile-left/groove/depth', ['1/32', '1/16'], ['4/5', '1 1/2']],
  ['rail-bottom/groove/depth', ['1/16', '1/16'], ['1 1/2', '1 1/2']],
  ['rail-top/groove/depth', ['1/16', '1/16'], ['1 1/2', '1 1/2']],
  ['rail-mid-1/groove/depth', ['1/16', '1/16'], ['1 1/2', '1 1/2']],
  ['rail-bottom/tenon/outerHeight', ['1/32', '1/32'], ['4/5', '4/5']],
  ['rail-top/tenon/innerHeight', ['1/32', '1/32'], ['4/5', '4/5']],
  ['rail-mid-1/tenon/innerHeight', ['1/32', '1/32'], ['4/5', '4/5']],
  // 3/8 − 3/16 − 1/32; 10 − 5 − 0.8.
  ['rail-bottom/haunch/length', ['5/32', '1/32'], ['4 1/5', '4/5']],
  ['rail-top/shoulder/height', ['0', '1/256'], ['0', '1/10']],
  ['rail-top/cheek/height', ['0', '1/256'], ['0', '1/10']],
  ['rail-top/shoulder/stop', ['0', '0'], ['0', '0']],
  ['rail-bottom/mitre/sightEdge', ['0', '0'], ['0', '0']],
  ['stile-left/mitre-bottom/sightEdge', ['0', '0'], ['0', '0']],
  ['stile-left/mitre-mid-1-lower/sightEdge', ['0', '0'], ['0', '0']],
  ['stile-left/notch-mid-1/from', ['0', '0'], ['0', '0']],
  ['stile-left/notch-mid-1/to', ['0', '0'], ['0', '0']],
  ['stile-left/notch-bottom/from', ['0', '0'], ['0', '0']],
  ['stile-left/notch-bottom/to', ['0', '0'], ['0', '0']],
  ['stile-right/notch-top/from', ['0', '0'], ['0', '0']],
  ['stile-right/notch-top/to', ['0', '0'], ['0', '0']],
  // Hold 3/8 − 1/16 = 5/16: 2 × (5/16 − 1/8) or 5/16 − 1/16; 8.5: 2 × 5.5 or 8.5 − 1.5.
  ['panel-1/mill/width', ['1/4', '1/8'], ['7', '3']],
  ['panel-2/mill/length', ['1/4', '1/8'], ['7', '3']],
  ['panel-1/raise/tongue', ['1/16', '1/64'], ['1 1/2', '2/5']],
] as const)('%s of the built-in door may be off by what is worked by hand', (where, inches, millimetres) => {
  expect(room(planned('in'), where), 'inches').toEqual(inches);
  expect(room(planned('mm'), where), 'millimetres').toEqual(millimetres);
});

test('a ripped strip is cut to the line, at its fence and at both its ends', () => {
  for (const units of ['in', 'mm'] as const) {
    const door = planned(units, {}, 'rip');
    for (const where of ['strip/fence', 'strip@bottom/run', 'strip@top/run'])
      expect(room(door, `stile-left/${where}`), `${units} ${where}`).toEqual(['0', '0']);
    expect(room(door, 'stile-left/notch-top/to')).toBeUndefined();
    expect(room(planned(units), 'stile-left/strip/fence')).toBeUndefined();
  }
});

test.each<[string, DoorFields, string, readonly [string, string], Partial<Allowed>]>([
  // The groove takes 1/2 − 1/8 − 1/8 of the tenon’s edge: 1/32 + 1/4, at both ends of a mid rail alike.
  [
    'a groove that eats the tenon’s edge',
    { groove: { depth: '1/2' }, bead: '1/8', tenon: { innerSetback: '1/8' } },
    'stile-left/mortise@bottom/stop',
    ['9/32', '3/32'],
    { lessBy: 'the tenon’s edge meets the end of the mortise' },
  ],
  [
    'the same at a mid rail’s start',
    { groove: { depth: '1/2' }, bead: '1/8', tenon: { innerSetback: '1/8' } },
    'stile-left/mortise@mid-1/start',
    ['3/32', '9/32'],
    { lessBy: 'the mortise runs past the rail’s shoulder' },
  ],
  // 1 11/16 − 3/16 − 1 1/4 − 0 − 1/16 − 1/8 = 1/16, and no clearance at all.
  [
    'a stile with no wood to spare',
    { stile: { width: '1 11/16' }, mortise: { clearance: '0' } },
    'stile-left/mortise/depthFromEdge',
    ['0', '1/16'],
    { moreBy: 'the wood behind the mortise, after trimming' },
  ],
  // A haunch to the groove’s floor.
  [
    'a haunch that fills its groove',
    { tenon: { haunchClearance: '0' } },
    'stile-left/groove/depth',
    ['0', '1/16'],
    { lessBy: 'the haunch touches the floor of the groove and holds the shoulder open' },
  ],
  // No haunch: a groove no deeper than the bead.
  [
    'a groove as shallow as the bead',
    { groove: { depth: '3/16' }, bead: '3/16', panel: { clearance: '1/32' } },
    'stile-left/groove/depth',
    ['1/32', '1/16'],
    { lessBy: 'the panel touches the floor of the groove' },
  ],
  [
    'a groove as shallow as the bead, its haunch',
    { groove: { depth: '3/16' }, bead: '3/16' },
    'rail-bottom/haunch/length',
    ['0', '0'],
    {},
  ],
  // 7/8 − 3/8 − 1/16 − 3/8 = 1/16 − nothing: at the crown 27/32, 1/32 is left.
  [
    'a top rail with hardly wood behind its groove',
    { topRail: { width: '27/32' }, arch: { rise: '1', flat: '1' } },
    'rail-top/slot/depth',
    ['1/16', '1/32'],
    { moreBy: 'the wood behind the groove, after trimming' },
  ],
  // Hold 3/16 − 3/32 = 3/32, clearance 3/32: none is left at the other side.
  [
    'a panel that hardly holds',
    { groove: { depth: '3/16' }, panel: { clearance: '3/32' } },
    'rail-bottom/groove/depth',
    ['3/32', '0'],
    { moreBy: 'the panel’s hold at the far side, when it lies against one floor' },
  ],
])('%s is bounded by what comes first, and says so', (_what, fields, where, expected, named) => {
  const door = planned('in', fields);
  expect(room(door, where)).toEqual(expected);
  expect(allowAt(door, where)).toMatchObject(named);
});

test('without reasons nothing is said of how exact a setting must be', () => {
  const plan = planFile({ format: 1, job: 'x', units: 'in', doors: [{ mark: 'A', opening: OPENING.in }] });
  expect(JSON.stringify(plan)).not.toContain('"allow"');
});
