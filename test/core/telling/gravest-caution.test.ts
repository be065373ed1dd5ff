import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { cautionKeys } from '#core/words/cautions.ts';
import { gravestCaution } from '#core/telling/gravest-caution.ts';
import { say } from '#core/words/say.ts';
import { everyStageJob } from '../../e2e/every-stage-job.ts';

const planned = planFile(everyStageJob('in'));
if (!planned.ok) throw new Error('the job has faults');
const stages = planned.value.doors.flatMap((door) => [
  ...door.parts.flatMap((part) => [...part.stages]),
  ...door.stages,
]);

test('the gravest danger of every stage is one of its own station’s cautions', () => {
  for (const { station, stage } of stages)
    expect(cautionKeys(station), stage).toContain(gravestCaution(station, stage));
});

test('a stopped rip, a mitre and a raised panel have a danger of their own; the mitre of another machine has not', () => {
  expect(say(gravestCaution('table-saw', 'strip'))).toMatch(/stopped rip/i);
  expect(say(gravestCaution('table-saw', 'mitre-mid-1-lower'))).toMatch(/clearing offcuts/i);
  expect(say(gravestCaution('router-table', 'raise'))).toMatch(/raising cutter/i);
  expect(gravestCaution('bench', 'mitre-top')).toBe(gravestCaution('bench', 'pare'));
});
