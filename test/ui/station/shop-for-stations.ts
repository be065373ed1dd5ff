import { vi } from 'vitest';
import type { JobLine } from '#core/api/jobs-api.ts';
import { indexParts } from '#core/marks/live-plan.ts';
import type { AcceptedMark, Mark } from '#core/marks/mark.ts';
import { emptyProgress, foldMarks } from '#core/marks/progress.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';
import { live } from '#ui/hub/live.svelte.ts';

const FILE = {
  format: 1,
  job: 'Millbrook boot room',
  units: 'in',
  ways: { strip: 'rip' },
  doors: [{ mark: 'BENCH', quantity: 2, opening: { width: '14 3/4', height: '22 1/2' } }],
};

/** A job at every station of this page, with a hub that takes each mark at once. `made` are the marks in order. */
export function openShop(): {
  readonly plan: Plan;
  readonly made: Mark[];
  readonly mark: (mark: Mark) => void;
} {
  const planned = planFile(FILE);
  if (!planned.ok) throw new Error('the job has faults');
  const plan = planned.value;
  const index = indexParts(plan);
  const line: JobLine = {
    id: plan.id,
    job: plan.job,
    units: 'in',
    doors: 2,
    parts: 12,
    left: 2,
    revision: 1,
    hash: '',
  };
  const made: Mark[] = [];
  let progress = emptyProgress(plan.id);
  const show = () => {
    live.jobs = new Map([
      [plan.id, { line, plan, index, file: FILE, asMarked: [], confirmed: progress, progress }],
    ]);
  };
  const mark = (one: Mark) => {
    const named = index.parts.get(one.code);
    if (named === undefined) throw new Error(`no part ${one.code}`);
    const replacement = one.mark === 'spoiled' ? { replacement: { code: '7K2Q4MX8BD', number: 1 } } : {};
    const accepted: AcceptedMark = {
      seq: progress.seq + 1,
      received: one.at,
      job: plan.id,
      ...named,
      mark: one,
      ...replacement,
    };
    progress = foldMarks(progress, [accepted]);
    show();
  };
  show();
  live.loaded = true;
  vi.spyOn(live.outbox, 'post').mockImplementation(({ mark: one }) => {
    made.push(one);
    mark(one);
    const value = { code: one.code, stages: [], next: null, replacement: '7K2Q4MX8BD' };
    return Promise.resolve(one.mark === 'spoiled' ? { kind: 'ok', value } : { kind: 'kept' });
  });
  return { plan, made, mark };
}
