import { expect, test } from 'vitest';
import { STATIONS } from '#core/stages/stations.ts';
import type { Missing } from '#core/marks/stage-state.ts';
import type { StageId } from '#core/stages/stage-id.ts';
import { REFUSALS } from '#core/marks/mark.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { missingNames } from '#core/telling/missing.ts';
import { partName, stageName, stationName } from '#core/telling/names.ts';
import { tellRefusal } from '#core/telling/tell-refusal.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };

const planned = planFile({ ...demo, ways: { strip: 'rip' } });
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const { doors } = planned.value;
const parts = doors.flatMap((door) => door.parts);
const all = [...doors.flatMap((door) => door.stages), ...parts.flatMap((part) => part.stages)];
const stages = [...new Map(all.map((each) => [each.stage, each])).values()];
const ids = new Set<string>([
  ...stages.map(({ stage }) => stage),
  ...parts.map(({ part }) => part),
  ...STATIONS,
]);
const names = [...ids].flatMap((id) =>
  [stageName(id), partName(id), stationName(id)].filter((name) => name !== id),
);

/** The ids of the plan that are words of a sentence, once the names that stand for them are taken out. */
function rawIn(told: string): string[] {
  const bare = names
    .toSorted((a, b) => b.length - a.length)
    .reduce((left, name) => left.replaceAll(name, '_'), told);
  return bare.split(/[\s:;,.()“”]+/).filter((word) => ids.has(word));
}

const missing = (...stages: StageId[]): Missing[] => stages.map((stage) => ({ stage }));

test('no refusal says an id of a stage, a part or a station, whatever stage it is of', () => {
  for (const refusal of REFUSALS)
    for (const { stage, station } of stages) {
      const missing: Missing[] = [{ stage }, { stage: 'mitre-top' }, { part: 'rail-bottom', stage: 'strip' }];
      const told = tellRefusal(refusal, {
        stage,
        station,
        missing,
        code: '803AX3UERH',
        replacedBy: '803AX3UERH',
      });
      expect(rawIn(told), told).toEqual([]);
      expect(told).not.toMatch(/[{}]/);
    }
});

test('what is missing is told by the names that stand on the screens', () => {
  expect(tellRefusal('stage-not-reached', { missing: missing('mortise', 'mitre-top', 'strip') })).toBe(
    `Not yet. First: ${stageName('mortise')}; ${stageName('mitre-top')}; ${stageName('strip')}.`,
  );
  expect(tellRefusal('stage-not-reached', { missing: [{ part: 'rail-top', stage: 'tenon' }] })).toContain(
    `${partName('rail-top')} (${stageName('tenon')})`,
  );
  expect(tellRefusal('already-done', { stage: 'strip' })).toContain(stageName('strip'));
  expect(tellRefusal('wrong-station', { station: 'table-saw' })).toContain(stationName('table-saw'));
});

test('of a door with much left to do the first four are named and the rest counted', () => {
  expect(missingNames(missing('mill', 'bead', 'groove', 'mortise', 'pare', 'strip'))).toBe(
    `${['mill', 'bead', 'groove', 'mortise'].map((each) => stageName(each)).join('; ')} and 2 more`,
  );
});

test('a stage that the part has not is no wrong code: it says which, and that the job may have changed', () => {
  const told = tellRefusal('malformed', { stage: 'strip' });
  expect(told).toContain(stageName('strip'));
  expect(told).toMatch(/job may have been changed/);
  expect(told).not.toMatch(/part code/);
  expect(tellRefusal('malformed')).toMatch(/part code/);
});
