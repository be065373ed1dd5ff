import { describe, expect, test } from 'vitest';
import type { PlanPart, PlanStage } from '#core/plan/plan.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { readProfile } from '#core/shop/read-profile.ts';
import { AT_STATIONS } from '#core/stages/cautions/at-stations.ts';
import { kindOf } from '#core/stages/stage-id.ts';
import { STATIONS } from '#core/stages/stations.ts';
import { factsOf, STAGE_KINDS } from '#core/stages/table.ts';
import { atStation, cautionsOf, cautionText, gravestOf } from '#core/telling/cautions-of.ts';
import { en } from '#core/words/en.ts';
import { LANGUAGES } from '#core/words/languages.ts';
import { say } from '#core/words/say.ts';
import { everyStageJob } from '../../e2e/every-stage-job.ts';

type Units = 'in' | 'mm';
interface Worked {
  readonly stage: PlanStage;
  readonly part?: PlanPart;
}

/** Every stage of the job that has them all, in a shop of these ways and this station of the rip; its arched door and the same without an arch. */
function workedIn(units: Units, shop: object = {}, ways: object = {}): Worked[] {
  const profile = readProfile(shop, units);
  if (!profile.ok) throw new Error(JSON.stringify(profile.faults));
  const job = everyStageJob(units) as { readonly doors: readonly object[]; readonly ways: object };
  const doors = [...job.doors, ...job.doors.map((door) => ({ ...door, mark: 'FLAT', arch: null }))];
  const planned = planFile({ ...job, ways: { ...job.ways, ...ways }, doors }, { profile: profile.value });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return planned.value.doors.flatMap(({ parts, stages }) => [
    ...parts.flatMap((part) => part.stages.map((stage) => ({ stage, part }))),
    ...stages.map((stage) => ({ stage })),
  ]);
}
const lengthsIn = (units: Units) => ({ units, read: (value: string | number) => `<${value}>` });
const toldOf = ({ stage, part }: Worked, units: Units = 'in') =>
  cautionsOf(stage, { ...(part === undefined ? {} : { part }), lengths: lengthsIn(units) });
const keysOf = (worked: Worked) => toldOf(worked).map(({ key }) => key);
const textsOf = (worked: Worked, units: Units = 'in') => toldOf(worked, units).map(cautionText);
function find(all: readonly Worked[], name: string, stage: string, arched = true): Worked {
  const found = all.find(
    ({ stage: { stage: id }, part }) =>
      id === stage &&
      part?.part === name &&
      part.stages.some((each) => each.stage === 'arch' || each.stage === 'cutout') === arched,
  );
  if (found === undefined) throw new Error(`no ${stage} of ${name}`);
  return found;
}

const inches = workedIn('in');
const WAYS: readonly (readonly [string, readonly Worked[]])[] = [
  ['ripped, grooved at the saw', inches],
  ['notched', workedIn('in', {}, { strip: 'notch' })],
  ['grooved at the router table', workedIn('in', {}, { groove: 'router' })],
  ['ripped at the band saw', workedIn('in', { stripStation: 'band-saw' })],
  ['in millimetres', workedIn('mm')],
];

test('the jobs walked here have every kind of stage', () => {
  const seen = new Set(WAYS.flatMap(([, all]) => all.map(({ stage }) => kindOf(stage.stage))));
  expect(STAGE_KINDS.filter((kind) => !seen.has(kind))).toEqual([]);
});

describe.each(WAYS)('%s', (name, all) => {
  const units = name === 'in millimetres' ? 'mm' : 'in';
  test('each stage of each part has three cautions of its own or more, none twice, each with its source', () => {
    for (const worked of all) {
      const told = toldOf(worked, units);
      const where = `${worked.part?.part ?? 'door'} ${worked.stage.stage}`;
      expect(told.length, where).toBeGreaterThanOrEqual(3);
      expect(new Set(told.map(({ key }) => key)).size, where).toBe(told.length);
      for (const { key, from } of told) {
        expect(key, where).toMatch(new RegExp(`^caution\\.${kindOf(worked.stage.stage) ?? ''}\\.`));
        expect(from.length, where).toBeGreaterThan(0);
        for (const source of from) expect(say(`office.source.${source}`), key).toMatch(/\w{4}/);
      }
    }
  });
  test('no two kinds of stage share one, and none leaves a figure open in any language', () => {
    const owner = new Map<string, string>();
    for (const worked of all)
      for (const { key, figures } of toldOf(worked, units)) {
        const kind = kindOf(worked.stage.stage) ?? '';
        expect(owner.get(say(key)) ?? kind, key).toBe(kind);
        owner.set(say(key), kind);
        for (const language of LANGUAGES) expect(say(key, { ...figures }, language)).not.toMatch(/[{}]/);
      }
  });
});

test('an arched rail is never hand-fed at the router table: its bead and slot have a gravest danger of their own', () => {
  for (const stage of ['bead', 'slot']) {
    const arched = find(inches, 'rail-top', stage);
    const straight = find(WAYS[2]?.[1] ?? [], 'rail-bottom', stage, false);
    expect(textsOf(arched)[0]).toMatch(/arched rail.*never hand-fee?d.*whatever its length/i);
    expect(textsOf(arched).join(' ')).toMatch(
      /carrier.*handles.*two or three.*springings.*against the cutter/i,
    );
    expect(keysOf(straight).filter((key) => keysOf(arched).includes(key))).toEqual([]);
    expect(textsOf(straight).join(' ')).not.toMatch(/arched/i);
  }
});

test('shoulders, cheeks, tenons and mitres of an arched rail warn first of what little it rests on, those of others not at all', () => {
  for (const stage of ['shoulder', 'cheek', 'tenon', 'mitre']) {
    // Face down it lies flat, and its two flats touch the gauge; on edge it stands on them.
    const little =
      stage === 'shoulder' || stage === 'cheek'
        ? /^Arched rail.*two flats touch the gauge.*carrier/
        : /^Arched rail.*feet/;
    expect(textsOf(find(inches, 'rail-top', stage))[0], stage).toMatch(little);
    expect(textsOf(find(inches, 'rail-bottom', stage, false)).join(' '), stage).not.toMatch(/arched|feet/i);
  }
});

test('a panel with an arch has its arched end as its gravest danger when raised', () => {
  const raised = inches.filter(({ stage }) => stage.stage === 'raise');
  const gravest = new Set(raised.map((worked) => keysOf(worked)[0]));
  expect([...gravest].sort()).toEqual(['caution.raise.arched', 'caution.raise.trap']);
  for (const worked of raised) expect(textsOf(worked).join(' ')).toMatch(/maximum marked on the cutter/);
});

test('the stopped rip says how high the blade is up; at the band saw nothing of the table saw’s is said', () => {
  const rip = find(inches, 'stile-left', 'strip', false);
  const { bladeHeight } = rip.stage.settings as { readonly bladeHeight?: string };
  expect(bladeHeight).toBe('1');
  expect(textsOf(rip)[0]).toMatch(/stopped rip.*switch off.*has stopped.*never pull/i);
  expect(textsOf(rip).join(' ')).toContain('<1>');
  const moved = find(WAYS[3]?.[1] ?? [], 'stile-left', 'strip', false);
  expect(moved.stage.station).toBe('band-saw');
  expect(textsOf(moved).length).toBeGreaterThanOrEqual(3);
  expect(keysOf(moved).filter((key) => keysOf(rip).includes(key))).toEqual([]);
  expect(textsOf(moved).join(' ')).not.toMatch(/hold-down|stopped rip/i);
});

test('without a way to read lengths no caution with a figure is told, and the others are', () => {
  const rip = find(inches, 'stile-left', 'strip', false);
  expect(cautionsOf(rip.stage).map(({ key }) => key)).toEqual(
    keysOf(rip).filter((key) => key !== 'caution.strip.bare'),
  );
});

test('a stage done where none of its cautions hold has those of that station', () => {
  const { stage } = find(inches, 'rail-bottom', 'mitre', false);
  expect(cautionsOf({ ...stage, station: 'bench' })).toEqual(atStation('bench'));
  expect(gravestOf({ ...stage, station: 'bench' }).key).toBe('caution.bench.1');
});

test('every caution that has words is told somewhere, and none has words of another’s kind', () => {
  const listed = [
    ...STAGE_KINDS.flatMap((kind) => factsOf(kind).cautions),
    ...STATIONS.flatMap((station) => AT_STATIONS[station]),
  ].map(({ key }) => key);
  const worded = Object.keys(en).filter((key) => /^caution\..+\./.test(key));
  expect([...listed].sort()).toEqual(worded.sort());
  for (const station of STATIONS)
    for (const { key } of AT_STATIONS[station]) expect(key).toContain(`caution.${station}.`);
});

test('a caution whose words name a figure needs it, and no other does', () => {
  for (const { key, needs } of STAGE_KINDS.flatMap((kind) => factsOf(kind).cautions))
    expect(/\{(\w+)\}/.exec(en[key])?.[1], key).toBe(needs);
});

test('every source is one that some caution is from', () => {
  const used = new Set(
    [...STAGE_KINDS.map((kind) => factsOf(kind).cautions), ...STATIONS.map((id) => AT_STATIONS[id])]
      .flat()
      .flatMap(({ from }) => from),
  );
  const named = Object.keys(en).filter((key) => key.startsWith('office.source.'));
  expect([...used].map((id) => `office.source.${id}`).sort()).toEqual(named.sort());
});
