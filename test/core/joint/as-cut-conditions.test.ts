import { expect, test } from 'vitest';
import type { PlanDoor } from '#core/plan/plan.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';
import { doorAsCut, faultsOf, planned, set, type Sizes } from '../measured/plan-as-cut.ts';

/** What is said of a door beyond what is said of it unmeasured. */
function told(door: PlanDoor): string[] {
  return door.notes
    .filter(({ path }) => path.startsWith('doors.A-1.'))
    .map(({ id, level, path }) => `${level} ${id} ${path.slice('doors.A-1.parts.'.length)}`);
}

/** The sentences of the same. */
function said(part: string, sizes: Sizes, more: object = {}): string[] {
  const plan = planned([{ ...more }], { doors: { 'A-1': { parts: { [part]: sizes } } } });
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  return (speakPlan(plan.value, 'en').doors[0]?.notes ?? [])
    .filter(({ path }) => path.startsWith('doors.A-1.'))
    .map(({ message }) => message.replaceAll('\u00a0', ' '));
}

// The built-in door in an opening of 16 by 30: stiles 30 + two horns of 1/2 = 31.
test.each([
  ['31 1/8', []],
  ['30 1/2', []],
  // The top horn used up and 1/32 more; 1/16 comes off there.
  ['30 15/32', ['warning stile-short stile-left.length']],
  ['30 7/16', ['warning stile-short stile-left.length']],
])('a stile of %s for 31', (length, notes) => {
  expect(told(doorAsCut({ 'stile-left': { length } }))).toEqual(notes);
});

/** What its first fault is told with. */
function figures(plan: ReturnType<typeof planned>): object | undefined {
  return plan.ok ? undefined : plan.faults[0]?.figures;
}

test('a stile that trimming does not make up for is refused, with the horns that would do, if any would', () => {
  const short = (length: string) =>
    planned([{}], { doors: { 'A-1': { parts: { 'stile-right': { length } } } } });
  // 30 3/8: the top horn is 1/8 under nothing; shared by both ends it leaves (30 3/8 − 30)/2 = 3/16.
  expect(faultsOf(short('30 3/8'))).toEqual(['doors.A-1.parts.stile-right.length stile-short']);
  expect(figures(short('30 3/8'))).toMatchObject({
    short: '1/8',
    trim: '1/16',
    remedy: { words: 'remedy.horn', figures: { horn: '3/16' } },
  });
  expect(figures(short('29 15/16'))).toMatchObject({ remedy: { words: 'remedy.new-part' } });
  // With those horns it is planned.
  expect(
    planned([{ horn: '3/16' }], { doors: { 'A-1': { parts: { 'stile-right': { length: '30 3/8' } } } } }).ok,
  ).toBe(true);
});

test('a horn that its error has used up may let the stile split beside the mortise', () => {
  // The top horn is 1/16; with a setback of 1/4 that is 5/16 under 3/8.
  const tenon = { outerSetback: '1/4' };
  expect(told(doorAsCut({ 'stile-left': { length: '30 9/16' } }, { tenon }))).toEqual([
    'warning stile-end-splits stile-left.length',
  ]);
});

// Rails 16 − 4 1/2 + 3/8 + two tenons of 1 1/4 = 14 3/8; from shoulder to shoulder 11 7/8.
test.each([
  ['14 7/16', ['advice rail-stop rail-top.length'], '1 9/32'],
  ['14 5/16', ['advice rail-stop rail-top.length'], '1 7/32'],
  // The mortise is 1/16 deeper than the tenon is long: (14 1/2 − 11 7/8)/2 = 1 5/16 meets its floor.
  ['14 1/2', ['advice rail-stop rail-top.length'], '1 5/16'],
  ['14 17/32', ['warning rail-long rail-top.length'], '1 1/4'],
  // Two grooves are 1/2: (12 7/8 − 11 7/8)/2.
  ['12 7/8', ['advice rail-stop rail-top.length'], '1/2'],
  ['12 3/4', ['warning rail-short rail-top.length'], '1 1/4'],
])('a rail of %s for 14 3/8: %s, its stop %s', (length, notes, stop) => {
  const door = doorAsCut({ 'rail-top': { length } });
  expect(told(door)).toEqual(notes);
  expect(set(door, 'rail-top', 'shoulder').stop).toBe(stop);
  expect(set(door, 'rail-bottom', 'shoulder').stop).toBe('1 1/4');
});

test('a rail is told with what to set, or what to do', () => {
  expect(said('rail-bottom', { length: '14 7/16' })).toEqual([
    'the bottom rail came out 14 7/16: with the stop block at 1 9/32 for both ends its shoulders stay 11 7/8 apart; 1/32 stays free below its tenons',
  ]);
  expect(said('rail-bottom', { length: '14 17/32' })).toEqual([
    'the bottom rail is 5/32 too long: its tenons would meet the mortises’ floors with its shoulders 11 7/8 apart; saw it to 14 3/8',
  ]);
});

test('in a groove deeper than what is left of the tenon, a short rail is no rail', () => {
  // Depth 3/4 past bead 3/16: a tenon of 1/2 would end within the groove. (12 15/16 − 11 7/8)/2 = 17/32, over 1/2.
  const groove = { depth: '3/4' };
  expect(told(doorAsCut({ 'rail-top': { length: '12 15/16' } }, { groove }))).toEqual([
    'warning rail-short rail-top.length',
  ]);
});

// The panel 11 1/2 + two holds of 5/16 = 12 1/8 by 25 + 5/8; its grooves 11 1/2 + 3/4 = 12 1/4 apart at their floors.
test.each([
  ['width', '12 3/32', []],
  ['width', '12 1/4', ['warning panel-no-clearance panel.width']],
  ['width', '12 17/64', ['warning panel-too-wide panel.width']],
  // Held 3/32 on both sides, and 9/32 free beside it.
  ['width', '11 11/16', ['warning panel-hold-small panel.width', 'warning panel-hold-clearance panel.width']],
  // Held 3/16, and 3/16 free: it may fall out on one side.
  ['width', '11 7/8', ['warning panel-hold-clearance panel.width']],
  ['width', '11 1/2', ['warning panel-too-narrow panel.width']],
  ['length', '25 5/8', []],
  ['length', '25 25/32', ['warning panel-too-long panel.length']],
  ['length', '24 15/16', ['warning panel-too-short panel.length']],
  // The frame leaves 1/2 in front of the back: T − wall.
  ['thickness', '17/32', ['warning panel-proud panel.thickness']],
  ['thickness', '7/32', ['warning panel-thin panel.thickness']],
  ['thickness', '7/16', []],
])('a panel whose %s came out %s', (size, is, notes) => {
  expect(told(doorAsCut({ panel: { [size]: is } }))).toEqual(notes);
});

test('a panel’s own width is asked whether it moves too far, where its wood is known', () => {
  // As planned 11 1/2 + two holds of 3/16, with 3/16 free on each side; 12 7/32 leaves 1/64.
  const panel = { species: 'oak, red', clearance: '3/16' };
  const door = doorAsCut({ panel: { width: '12 7/32' } }, { panel });
  expect(door.notes.filter(({ id }) => id === 'panel-swells').map(({ path }) => path)).toEqual([
    'doors.A-1.parts.panel.width',
  ]);
});

test('grooves of both stiles that differ are told, at the one that was measured', () => {
  const differ = (left: Sizes, right: Sizes) => told(doorAsCut({ 'stile-left': left, 'stile-right': right }));
  expect(differ({ grooveWidth: '17/64' }, {})).toEqual(['warning grooves-differ stile-left.grooveWidth']);
  // No chisel of the shop is that narrow.
  expect(differ({ grooveWidth: '15/64' }, {})).toEqual([
    'warning grooves-differ stile-left.grooveWidth',
    'warning stile-no-chisel stile-left.grooveWidth',
  ]);
  expect(differ({ grooveWidth: '15/64' }, { grooveWidth: '1/4' })).toEqual([
    'warning grooves-differ stile-right.grooveWidth',
    'warning stile-no-chisel stile-left.grooveWidth',
  ]);
  expect(differ({ grooveWidth: '17/64' }, { grooveWidth: '17/64' })).toEqual([]);
  expect(said('stile-left', { grooveWidth: '17/64' })).toEqual([
    'the groove of the left stile is 17/64, that of the other stile 1/4: tenons are cut to 1/4 and have 1/64 of room there; glue veneer to those cheeks',
  ]);
});

test('in millimetres a rail of 359 for 360 keeps its shoulders 296 apart, and one of 363.5 is sawn off', () => {
  const rail = (length: string) =>
    doorAsCut({ 'rail-mid-1': { length } }, { midRails: [{ width: 75, centre: 300 }] }, 'mm');
  // 400 − 114 + 10 = 296; (359 − 296)/2 = 31.5. The mortise takes 32 + 1.5; (363.5 − 296)/2 = 33.75.
  expect(told(rail('359'))).toEqual(['advice rail-stop rail-mid-1.length']);
  expect(set(rail('359'), 'rail-mid-1', 'tenon').innerStop).toBe('31 1/2');
  expect(told(rail('363.5'))).toEqual(['warning rail-long rail-mid-1.length']);
});
