import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';

/** 600 doors of 60 marks, half of them arched: 3 000 parts. */
const planned = planFile({
  format: 1,
  job: 'Bench',
  units: 'in',
  doors: Array.from({ length: 60 }, (_, k) => ({
    mark: `D${k}`,
    quantity: 10,
    opening: { width: `${14 + (k % 9)} ${(k % 15) + 1}/16`, height: `${24 + (k % 31)} ${(k % 63) + 1}/64` },
    ...(k % 2 === 0 ? { arch: { rise: '1 3/4', flat: '3/4' } } : {}),
  })),
});
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
export const plan: Plan = planned.value;
