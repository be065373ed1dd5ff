import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { PlanStage } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';
import { isSet } from '#core/plan/set-or-follows.ts';
import { kindOf } from '#core/stages/stage-id.ts';
import { factsOf, STAGE_KINDS, type StageKind } from '#core/stages/table.ts';
import type { LooseStage } from '../../loose-plan.ts';
import { everyStageJob } from '../../e2e/every-stage-job.ts';

/** A door that is trimmed by another amount on each side. */
function unevenJob(units: Units): object {
  const reveal = units === 'in' ? { left: '1/8', top: '1/8' } : { left: '3', top: '3' };
  const opening = units === 'in' ? { width: '16', height: '30' } : { width: '400', height: '760' };
  return { format: 1, job: 'Uneven', units, doors: [{ mark: 'U', opening, reveal }] };
}

function stagesOf(units: Units): PlanStage[] {
  const planned = planFile(everyStageJob(units));
  const uneven = planFile(unevenJob(units));
  if (!planned.ok || !uneven.ok) throw new Error('the job has faults');
  return [...planned.value.doors, ...uneven.value.doors].flatMap(({ parts, stages }) => [
    ...parts.flatMap((part) => [...part.stages]),
    ...stages,
  ]);
}

test('at the band saw the trammel is set; chord, rise and the length of the arc follow from it', () => {
  const arch = stagesOf('in').find(({ stage }) => stage === 'arch');
  const names = Object.keys(arch?.settings ?? {});
  expect(names.filter((name) => isSet('arch', name))).toEqual(['radius', 'pivot', 'springing', 'centre']);
  expect(names.filter((name) => !isSet('arch', name))).toEqual(['chord', 'rise', 'arcLength']);
});

test.each(['in', 'mm'] as const)(
  'in %s every stage that has numbers, and every place, has one to be set',
  (units) => {
    for (const { stage, settings, places = [] } of stagesOf(units))
      for (const names of [settings, ...places.map((each) => each.settings)].map(Object.keys))
        if (names.length > 0)
          expect(
            names.filter((name) => isSet(stage, name)),
            stage,
          ).not.toEqual([]);
  },
);

test('the table of stages has every kind that is printed, and of each just the settings that are', () => {
  const printed = new Map<StageKind, Set<string>>();
  for (const { stage, settings, places = [] } of [...stagesOf('in'), ...stagesOf('mm')] as LooseStage[]) {
    const kind = kindOf(stage);
    if (kind === null) throw new Error(`no kind has the stage ${stage}`);
    const names = printed.get(kind) ?? new Set<string>();
    printed.set(kind, names);
    for (const each of [settings, ...places.map((place) => place.settings)])
      for (const name of Object.keys(each)) names.add(name);
  }
  expect([...printed.keys()].sort()).toEqual([...STAGE_KINDS].sort());
  for (const kind of STAGE_KINDS) {
    const { settings, place = {} } = factsOf(kind);
    // How thick a piece is pared where the machine's step leaves it thicker: in settable numbers alone.
    const inPlan = Object.keys({ ...settings, ...place }).filter((name) => name !== 'pareTo');
    expect([...(printed.get(kind) ?? [])].sort(), kind).toEqual(inPlan.sort());
  }
});

test('no stage has more than one number on which its fit hangs, and that one is set', () => {
  const gates = STAGE_KINDS.flatMap((kind) => {
    const { settings, place = {} } = factsOf(kind);
    const own = Object.entries({ ...settings, ...place }).filter(([, facts]) => facts.gates !== undefined);
    expect(own.length, kind).toBeLessThanOrEqual(1);
    for (const [, facts] of own) expect(facts.follows, kind).toBeUndefined();
    return own.map(([name, { gates: how }]) => `${kind} ${name}: ${how ?? ''}`);
  });
  expect(gates.sort()).toEqual([
    'cheek height: push',
    'mitre sightEdge: line',
    'mitre-end sightEdge: line',
    'notch to: line',
    'shoulder stop: line',
    'strip run: line',
  ]);
});
