import { expect, test } from 'vitest';
import { STATIONS } from '#core/stages/stations.ts';
import { indexParts } from '#core/marks/live-plan.ts';
import type { AcceptedMark } from '#core/marks/mark.ts';
import { emptyProgress, foldMarks } from '#core/marks/progress.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { countWaiting } from '#core/queue/count-waiting.ts';
import { waitingAt } from '#core/queue/waiting.ts';
import { everyStageJob } from '../../e2e/every-stage-job.ts';

const planned = planFile(everyStageJob('in'));
if (!planned.ok) throw new Error('the job has faults');
const plan = planned.value;
const AT = '2026-11-25T08:00:00.000Z';

/** The job after so many of its marks, part by part in turn. */
function after(count: number) {
  const most = Math.max(...plan.doors.flatMap(({ parts }) => parts.map(({ stages }) => stages.length)));
  const order = plan.doors.flatMap(({ door, parts, stages }) => [
    ...Array.from({ length: most }, (_, k) => k).flatMap((k) =>
      parts.flatMap((part) => (part.stages[k] === undefined ? [] : [{ door, part, stage: part.stages[k] }])),
    ),
    ...stages.flatMap((stage) => (parts[0] === undefined ? [] : [{ door, part: parts[0], stage }])),
  ]);
  const marks = order.slice(0, count).map(({ door, part, stage }, k): AcceptedMark => ({
    seq: k + 1,
    received: AT,
    job: plan.id,
    door,
    part: part.part,
    mark: {
      id: String(k),
      code: part.code,
      station: stage.station,
      stage: stage.stage,
      mark: 'done',
      at: AT,
    },
  }));
  return { all: order.length, progress: foldMarks(emptyProgress(plan.id), marks) };
}

test('at every step of a job each station counts just what its list holds, a whole door once', () => {
  const { all } = after(0);
  const seen = new Set<string>();
  for (let count = 0; count <= all; count += 1) {
    const jobs = [{ plan, index: indexParts(plan), progress: after(count).progress, line: {} }];
    const counts = countWaiting(jobs);
    for (const station of STATIONS) {
      const waiting = waitingAt(station, jobs).length;
      expect(counts.get(station), `${station} after ${count} marks`).toBe(waiting);
      if (waiting > 0) seen.add(station);
    }
  }
  expect([...seen].sort()).toEqual([...STATIONS].sort());
});
