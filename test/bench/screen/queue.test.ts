import { loadavg } from 'node:os';
import { expect, test } from 'vitest';
import { indexParts } from '#core/marks/live-plan.ts';
import { emptyProgress, foldMarks } from '#core/marks/progress.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { queueGroups } from '#core/queue/groups.ts';
import { waitingAt } from '#core/queue/waiting.ts';
import { percentile } from '../million-marks.ts';

/** Three hundred doors of which no two are alike: as many groups as there can be. */
const job = {
  format: 1,
  job: 'All different',
  due: '2027-03-26',
  units: 'in',
  doors: Array.from({ length: 300 }, (_, k) => ({
    mark: `D${k + 1}`,
    opening: {
      width: `${12 + Math.floor(k / 16)} ${k % 16}/16`,
      height: `${20 + Math.floor(k / 16)} ${(k * 7) % 16}/16`,
    },
  })),
};

/** So many groups the screen of a station shows. */
const SHOWN = 4;

test('the queue of a station is put in order in under 20 ms with 300 doors of which no two are alike', () => {
  const planned = planFile(job);
  if (!planned.ok) throw new Error('the job has faults');
  const plan = planned.value;
  const marks = plan.doors.flatMap(({ door, parts }) =>
    parts.flatMap(({ part, code, stages }) =>
      stages
        .slice(
          0,
          Math.max(
            0,
            stages.findIndex(({ station }) => station === 'table-saw'),
          ),
        )
        .map(({ stage, station }) => ({ door, part, code, stage, station })),
    ),
  );
  const at = '2026-11-25T08:00:00.000Z';
  const progress = foldMarks(
    emptyProgress(plan.id),
    marks.map(({ door, part, code, stage, station }, k) => ({
      seq: k + 1,
      received: at,
      job: plan.id,
      door,
      part,
      mark: { id: String(k), code, station, stage, mark: 'done' as const, at },
    })),
  );
  const fresh = { plan, index: indexParts(plan), progress: emptyProgress(plan.id), line: { due: job.due } };
  for (const [station, jobs] of [
    ['milling', [fresh]],
    ['table-saw', [{ ...fresh, progress }]],
  ] as const) {
    const waiting = waitingAt(station, jobs);
    const took: number[] = [];
    const groups = queueGroups(waiting).length;
    const shown = queueGroups(waiting, null, SHOWN).length;
    for (let k = 0; k < 30; k += 1) {
      const began = performance.now();
      queueGroups(waitingAt(station, jobs), null, SHOWN);
      took.push(performance.now() - began);
    }
    const median = percentile(took, 0.5);
    console.log(
      `${station}: ${waiting.length} waiting in ${groups} groups, median ${median.toFixed(1)} ms, first ${took[0]?.toFixed(1) ?? ''} ms, load ${loadavg()[0]?.toFixed(1) ?? ''}`,
    );
    expect(shown).toBe(Math.min(SHOWN, groups));
    expect(waiting.length).toBeGreaterThan(1000);
    expect(median).toBeLessThan(20);
  }
});
