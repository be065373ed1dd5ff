import { expect, test } from 'vitest';
import type { DoorFields } from './door-fields.ts';
import { length } from '#core/length/length.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { speakFaults } from '#core/telling/speak-faults.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import { faultWords } from '#core/words/faults.ts';

const GOOD: DoorFields = { mark: 'A', opening: { width: '16', height: '30' } };

function idsOf(fields: DoorFields, units: 'in' | 'mm' = 'in'): string[] {
  const ways = { strip: 'rip' };
  const planned = planFile({ format: 1, job: 'x', units, ways, doors: [{ ...GOOD, ...fields }] });
  return planned.ok
    ? (planned.value.doors[0]?.notes.map(({ id, path }) => `${id} ${path}`) ?? [])
    : planned.faults.map(({ code, path }) => `${code} ${path}`);
}

test('the built-in door has nothing against it', () => {
  expect(idsOf({})).toEqual([]);
  expect(idsOf({ opening: { width: '400', height: '750' } }, 'mm')).toEqual([]);
});

const FAULTS: [string, DoorFields][] = [
  ['sight-width doors[0].stile.width', { stile: { width: '8' } }],
  ['sight-height doors[0].opening.height', { opening: { width: '16', height: '5' } }],
  [
    'mid-rails-overlap doors[0].midRails[1].centre',
    {
      midRails: [
        { width: '3', centre: '14' },
        { width: '3', centre: '16' },
      ],
    },
  ],
  ['groove-thickness doors[0].groove.width', { groove: { width: '3/4' } }],
  ['bead-wall doors[0].bead', { bead: '5/16' }],
  ['oversize doors[0].oversize.width', { oversize: { width: '-1/4' } }],
  ['oversize doors[0].reveal.left', { oversize: { width: '-1/4' }, reveal: { right: '1/8' } }],
  ['groove-mortise doors[0].groove.depth', { groove: { depth: '1 7/16' } }],
  ['tenon-width doors[0].bottomRail.width', { bottomRail: { width: '13/16' } }],
  ['tenon-chisel doors[0].bottomRail.width', { bottomRail: { width: '1' } }],
  ['no-chisel doors[0].groove.width', { groove: { width: '3/16' } }],
  ['no-dado doors[0].groove.width', { groove: { width: '1 1/8' }, thickness: '3' }],
  ['behind-mortise doors[0].tenon.length', { tenon: { length: '2' } }],
  ['cover doors[0].tenon.outerSetback', { tenon: { outerSetback: '1/16' } }],
  ['end-play doors[0].mortise.endPlay', { mortise: { endPlay: '5/16' } }],
  ['behind-groove doors[0].topRail.width', { topRail: { width: '1/4' }, arch: { rise: '2', flat: '1' } }],
  ['panel-hold doors[0].panel.clearance', { panel: { clearance: '3/8' } }],
  ['arch-rise doors[0].arch.rise', { arch: { rise: '0', flat: '1' } }],
  ['arch-chord doors[0].arch.flat', { arch: { rise: '1', flat: '6' } }],
  ['arch-too-high doors[0].arch.rise', { arch: { rise: '5', flat: '2' } }],
  ['blade-height doors[0].thickness', { thickness: '3', groove: { width: '1/2' }, bead: '1/2' }],
  [
    'survey-impossible doors[0].survey',
    {
      survey: {
        widthBottom: '16',
        widthTop: '16',
        heightLeft: '30',
        heightRight: '30',
        diagonalUp: '90',
        diagonalDown: '34',
      },
    },
  ],
];

test.each(FAULTS)('%s is a fault', (id, fields) => {
  expect(idsOf(fields)).toContain(id);
});

const NOTES: [string, DoorFields][] = [
  ['fillet-over-bead doors[0].bead', { bead: '1/16', thickness: '1' }],
  ['bead-small doors[0].bead', { bead: '1/32' }],
  ['groove-share doors[0].groove.width', { thickness: '1 1/8' }],
  ['wall-thin doors[0].groove.width', { thickness: '7/16', bead: '1/16' }],
  ['tenon-narrow doors[0].bottomRail.width', { bottomRail: { width: '1 3/16' } }],
  ['tenon-short doors[0].tenon.length', { tenon: { length: '7/16' } }],
  ['groove-eats-tenon doors[0].bottomRail.width', { groove: { depth: '1/2' } }],
  ['tenon-wide doors[0].bottomRail.width', { bottomRail: { width: '4' } }],
  ['behind-mortise doors[0].tenon.length', { tenon: { length: '1 3/4' } }],
  ['cover doors[0].tenon.outerSetback', { tenon: { outerSetback: '1/8' } }],
  ['end-splits doors[0].horn', { horn: '1/16', tenon: { outerSetback: '1/4' } }],
  ['no-end-play doors[0].mortise.endPlay', { mortise: { endPlay: '0' } }],
  ['no-horn doors[0].horn', { horn: '0' }],
  ['haunch-tight doors[0].tenon.haunchClearance', { tenon: { haunchClearance: '0' } }],
  ['no-clearance doors[0].mortise.clearance', { mortise: { clearance: '0' } }],
  ['behind-groove doors[0].topRail.width', { topRail: { width: '5/8' }, arch: { rise: '2', flat: '1' } }],
  ['panel-hold-small doors[0].panel.clearance', { panel: { clearance: '9/32' } }],
  ['panel-hold-clearance doors[0].panel.clearance', { panel: { clearance: '3/16' } }],
  ['panel-no-clearance doors[0].panel.clearance', { panel: { clearance: '0' } }],
  ['panel-swells doors[0].panel.clearance', { panel: { species: 'beech' } }],
  [
    'panel-shrinks doors[0].groove.depth',
    { opening: { width: '20', height: '30' }, panel: { species: 'beech', clearance: '1/8' } },
  ],
  ['arch-flat doors[0].arch.flat', { arch: { rise: '1', flat: '1/8' } }],
  ['arch-short-grain doors[0].arch.rise', { arch: { rise: '4', flat: '1' } }],
  ['bearing doors[0].arch.rise', { arch: { rise: '3/16', flat: '5 9/16' } }],
  ['drum doors[0].arch.rise', { arch: { rise: '1/8', flat: '5 5/8' } }],
  [
    'lag doors[0].bottomRail.width',
    { thickness: '2', groove: { width: '1/2' }, bottomRail: { width: '1 3/4' }, horn: '1/4' },
  ],
  ['panel-proud doors[0].panel.thickness', { panel: { thickness: '5/8' } }],
  ['panel-thin doors[0].panel.thickness', { panel: { thickness: '3/16' } }],
  [
    'band-narrow doors[0].groove.depth',
    {
      groove: { depth: '1 1/8' },
      tenon: { length: '1 1/4' },
      stile: { width: '3' },
      bottomRail: { width: '4' },
      topRail: { width: '4' },
    },
  ],
  [
    'closure doors[0].survey',
    {
      survey: {
        widthBottom: '16',
        widthTop: '16 1/4',
        heightLeft: '30',
        heightRight: '30',
        diagonalUp: '34',
        diagonalDown: '34',
      },
    },
  ],
  [
    'does-not-cover doors[0].oversize',
    {
      survey: {
        widthBottom: '17',
        widthTop: '17',
        heightLeft: '30',
        heightRight: '30',
        diagonalUp: '34 31/64',
        diagonalDown: '34 31/64',
      },
    },
  ],
  ['short-piece doors[0].opening.width', { opening: { width: '10', height: '30' } }],
];

test.each(NOTES)('%s is worth a warning or advice', (id, fields) => {
  expect(idsOf(fields)).toContain(id);
});

test('a chisel under half of the groove is worth a warning', () => {
  const profile = { ...builtInProfile('in'), chisels: [length(1, 8)] };
  const planned = planFile(
    { format: 1, job: 'x', units: 'in', doors: [{ ...GOOD, groove: { width: '5/16' } }] },
    { profile },
  );
  expect(planned.ok && planned.value.doors[0]?.notes.map(({ id }) => id)).toContain('chisel-small');
});

test('a dado as wide as the groove is taken only where none is narrower and half as wide, and is worth a warning', () => {
  const planned = (dados: readonly string[], groove = 'saw') => {
    const dadoWidths = dados.map((each) => length(1, Number(each.slice(2))));
    const found = planFile(
      { format: 1, job: 'x', units: 'in', ways: { groove }, doors: [GOOD] },
      { profile: { ...builtInProfile('in'), dadoWidths } },
    );
    if (!found.ok) return found.faults.map(({ code, path }) => `${code} ${path}`);
    const [door] = found.value.doors;
    const blade = door?.parts[0]?.stages.find(({ stage }) => stage === 'groove')?.settings ?? {};
    return ['blade' in blade ? blade.blade : 'none', ...(door?.notes.map(({ id }) => id) ?? [])];
  };
  // A groove of 1/4: two passes of 3/16 or of 1/8 clear it; 1/16 leaves a tongue between them.
  expect(planned(['1/4', '1/8'])).toEqual(['1/8']);
  expect(planned(['1/4', '1/16'])).toEqual(['1/4', 'dado-as-wide']);
  expect(planned(['1/2', '1/16'])).toEqual(['no-dado doors[0].groove.width']);
  expect(planned(['1/2', '1/16'], 'router')).toEqual(['none']);
});

test('a sliding fit that leaves a panel no tongue is a fault', () => {
  const planned = (fit: string) =>
    planFile(
      { format: 1, job: 'x', units: 'in', doors: [GOOD] },
      { profile: { ...builtInProfile('in'), slidingFit: length(1, Number(fit)) } },
    );
  expect(planned('5').ok).toBe(true);
  const none = planned('4');
  expect(none.ok ? [] : none.faults.map(({ code, path }) => `${code} ${path}`)).toEqual([
    'panel-tongue doors[0].groove.width',
  ]);
});

test('a fault or note of a mid rail names it by its place in the job file', () => {
  const midRails = [
    { width: '3', centre: '24' },
    { width: '1', centre: '12' },
  ];
  expect(idsOf({ midRails })).toEqual(['tenon-chisel doors[0].midRails[1].width']);
  expect(idsOf({ midRails: midRails.toReversed() })).toEqual(['tenon-chisel doors[0].midRails[0].width']);
});

test('a wide tenon is told of each door that has one, whatever the quantity, and what can be done by hand', () => {
  const planned = planFile({
    format: 1,
    job: 'x',
    units: 'in',
    doors: [
      { ...GOOD, quantity: 3, bottomRail: { width: '6' } },
      { ...GOOD, mark: 'B', bottomRail: { width: '4' }, topRail: { width: '4' } },
      { ...GOOD, mark: 'C' },
    ],
  });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const told = planned.value.doors.flatMap(({ door, notes }) =>
    notes.filter(({ id }) => id === 'tenon-wide').map(({ path }) => `${door} ${path}`),
  );
  expect(told).toEqual([
    'A-1 doors[0].bottomRail.width',
    'A-2 doors[0].bottomRail.width',
    'A-3 doors[0].bottomRail.width',
    'B-1 doors[1].bottomRail.width',
    'B-1 doors[1].topRail.width',
  ]);
  const [door] = speakPlan(planned.value, 'en').doors;
  const message = door?.notes.find(({ id }) => id === 'tenon-wide')?.message;
  expect(message).toContain('split it by hand into two across the rail’s width');
});

test('an arched panel is short by its length at the crown, and each short one is named', () => {
  const short = (height: string, fields: DoorFields) => {
    const planned = planFile({
      format: 1,
      job: 'x',
      units: 'in',
      doors: [{ ...GOOD, opening: { width: '16', height }, ...fields }],
    });
    if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
    return speakPlan(planned.value, 'en')
      .doors[0]?.notes.filter(({ id }) => id === 'short-piece')
      .map(({ figures }) => `${String(figures.part)} ${String(figures.length)}`);
  };
  const arch = { rise: '1', flat: '1' };
  // Between the rails 16 1/4 − 2 3/4 − 2 1/4 − 1 = 10 1/4, with 5/16 of hold at both ends 10 7/8, at the crown 11 7/8.
  expect(short('16 1/4', { arch })).toEqual(['panel 11 7/8']);
  expect(short('17', { arch })).toEqual([]);
  // 12 − 1 1/2 − 2 3/4 = 7 3/4 under the mid rail, and twice 5/16.
  expect(short('30', { midRails: [{ width: '3', centre: '12' }] })).toEqual(['panel 1 8 3/8']);
});

const AS_CUT = [
  'fault.stile-short',
  'note.stile-short',
  'note.stile-end-splits',
  'note.rail-stop',
  'note.rail-long',
  'note.rail-short',
  'note.grooves-differ',
  'note.stile-no-chisel',
  'note.panel-too-wide',
  'note.panel-too-long',
  'note.panel-too-narrow',
  'note.panel-too-short',
];

test('every fault and note that has words was shown above', () => {
  const shown = new Set([
    'note.chisel-small',
    'note.dado-as-wide',
    'fault.panel-tongue',
    'fault.oversize.side',
    // Of parts as they came out: test/core/joint/as-cut-conditions.test.ts.
    ...AS_CUT,
    ...FAULTS.map(([id]) => `fault.${id.split(' ')[0] ?? ''}`),
    ...NOTES.map(([id]) => `note.${id.split(' ')[0] ?? ''}`),
  ]);
  expect(Object.keys(faultWords).filter((key) => !shown.has(key))).toEqual([]);
});

test('the limits of a job in millimetres are the shop’s round ones', () => {
  expect(idsOf({ opening: { width: '400', height: '750' }, bead: '1' }, 'mm')).toContain(
    'bead-small doors[0].bead',
  );
  expect(idsOf({ opening: { width: '400', height: '750' }, bead: '2' }, 'mm')).not.toContain(
    'bead-small doors[0].bead',
  );
});

test('a panel that swells or shrinks by what reads as its room is no warning; a step of the tape more is one', () => {
  const moves = (width: string, clearance: string) =>
    idsOf({
      opening: { width, height: '30' },
      groove: { depth: '1/2' },
      bead: '1/4',
      tenon: { length: '1' },
      panel: { species: 'cherry', clearance },
    }).filter((id) => id.startsWith('panel-s'));
  // Flat-sawn cherry (Wood Handbook, FPL-GTR-190, table 13-5: 0.00248 a percent) from 8 to 12 percent: 0.00992 of its width,
  // 13/16 over the sight width. 22 7/8: it grows 0.19034, read 3/16, and 3/16 is free; 23 1/4: 0.19406.
  expect(moves('22 7/8', '3/32')).toEqual([]);
  expect(moves('23 1/4', '3/32')).toEqual([]);
  // 0.19654, read 13/64.
  expect(moves('23 1/2', '3/32')).toEqual(['panel-swells doors[0].panel.clearance']);
  // From 8 to 6 it loses 0.00496 of 25 3/8, 0.12586, read 1/8, and floating it may lose 5/16 − 3/16 = 1/8; of 27 1/8 0.13454, 9/64.
  expect(moves('29 1/4', '3/16')).toEqual([]);
  expect(moves('31', '3/16')).toEqual(['panel-shrinks doors[0].groove.depth']);
});

test('no fault tells a length below nothing: what is left is “nothing”, and by how much it is short', () => {
  const doors = [
    { stile: { width: '8' } },
    { stile: { width: '9' } },
    { opening: { width: '16', height: '5' } },
    { opening: { width: '16', height: '4' } },
    { tenon: { length: '2' } },
    { tenon: { length: '3' } },
    { topRail: { width: '1/8' } },
    { bottomRail: { width: '1/4' } },
    { topRail: { width: '1/4' }, arch: { rise: '2', flat: '1' } },
    { arch: { rise: '1', flat: '6' } },
    { arch: { rise: '1', flat: '9' } },
    { midRails: [{ width: '1/4' }] },
    { midRails: [{ width: '2', centre: '1' }] },
  ];
  const told = doors.flatMap((fields) => {
    const planned = planFile({
      format: 1,
      job: 'x',
      units: 'in',
      doors: [{ mark: 'A', opening: { width: '16', height: '30' }, ...fields }],
    });
    if (planned.ok) throw new Error(`${JSON.stringify(fields)} can be made`);
    return [...speakFaults(planned.faults, 'en'), ...speakFaults(planned.faults, 'de')].map(
      ({ message }) => message,
    );
  });
  expect(told.filter((message) => /[-−]\d|\bnur nichts|only nothing/.test(message))).toEqual([]);
  const all = told.join('\n');
  expect(all).toMatch(/nothing \(\S+ short\) is left between the rails/);
  expect(all).toMatch(/zwischen den Querfriesen bleibt nichts \(\S+ zu wenig\)/);
  expect(all).toMatch(/nothing \(\S+ short\) is left for the tenon of the bottom rail/);
});
