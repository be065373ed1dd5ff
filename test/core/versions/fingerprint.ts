import { createHash } from 'node:crypto';
import { boardDoor } from '#core/marks/board.ts';
import { liveDoor } from '#core/marks/live-plan.ts';
import type { AcceptedMark, Mark } from '#core/marks/mark.ts';
import { emptyProgress, foldMarks } from '#core/marks/progress.ts';
import { partCode } from '#core/codes/part-code.ts';
import type { Plan } from '#core/plan/plan.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';
import worked from '../../fixtures/worked-example.json' with { type: 'json' };
import { fixedJobs } from './fixed-jobs.ts';

/** What a version makes of jobs and marks that never change, as hashes. */
export interface Fingerprint {
  /** Printed plans, or the faults that there are instead. */
  readonly plans: string;
  /** The same with where each setting is measured from and how it was reckoned. */
  readonly reasons: string;
  /** Marks folded into progress, and the board's lines of it. */
  readonly fold: string;
}

/** The fingerprint of the arithmetic as it stands. */
export function fingerprint(): Fingerprint {
  return { plans: hashOf(printed(null)), reasons: hashOf(printed('en')), fold: hashOf(folded()) };
}

function printed(why: 'en' | null): unknown {
  return fixedJobs().map((job) => {
    const planned = planFile(job, { why });
    return planned.ok ? speakPlan(planned.value, 'en') : planned.faults.map(({ path, code }) => [path, code]);
  });
}

function folded(): unknown {
  const planned = planFile(worked);
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const plan = planned.value;
  const progress = foldMarks(emptyProgress(plan.id), [...marksOf(plan)]);
  return [progress, plan.doors.map((door) => boardDoor(plan.id, liveDoor(door, progress), progress))];
}

/** Every third stage done, some of it undone again, a part spoiled and its replacement begun, test pieces proved. */
function* marksOf(plan: Plan): Generator<AcceptedMark> {
  let seq = 0;
  for (const { door, mark, parts } of plan.doors)
    for (const { part, code, stages } of parts)
      for (const [k, { stage, station }] of stages.entries()) {
        const accepted = (is: Mark['mark'], own = code): AcceptedMark => {
          seq += 1;
          const at = new Date(Date.UTC(2026, 10, 2, 8, 0, seq)).toISOString();
          const id = `00000000-0000-4000-8000-${String(seq).padStart(12, '0')}`;
          return {
            seq,
            received: at,
            job: plan.id,
            door,
            part,
            mark: { id, code: own, station, stage, mark: is, at },
          };
        };
        if (k % 3 === 2) continue;
        yield accepted('proved');
        yield accepted('done');
        if (k % 3 === 1) yield accepted('undo');
        if (k !== 3 || part !== 'rail-top') continue;
        const number = 1;
        const fresh = partCode({ job: plan.id, mark, k: 1, part, replacement: number });
        yield { ...accepted('spoiled'), replacement: { code: fresh, number } };
        yield accepted('done', fresh);
      }
}

function hashOf(value: unknown): string {
  return createHash('sha256').update(JSON.stringify(value)).digest('hex').slice(0, 32);
}
