import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { PlanStage } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';
import { FOLLOWS, isSet } from '#core/plan/set-or-follows.ts';
import { everyStageJob } from '../../e2e/every-stage-job.ts';

function stagesOf(units: Units): PlanStage[] {
  const planned = planFile(everyStageJob(units));
  if (!planned.ok) throw new Error('the job has faults');
  return planned.value.doors.flatMap(({ parts, stages }) => [
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

test('every number that is said to follow is one of its kind of stage', () => {
  const printed = new Set(
    stagesOf('in').flatMap(({ stage, settings, places = [] }) =>
      [settings, ...places.map((each) => each.settings)]
        .flatMap(Object.keys)
        .map((name) => `${stage.split('-')[0] ?? ''} ${name}`),
    ),
  );
  const said = Object.entries(FOLLOWS).flatMap(([kind, names]) => names.map((name) => `${kind} ${name}`));
  expect(said.filter((each) => !printed.has(each))).toEqual([]);
});
