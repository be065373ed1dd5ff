import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };
import worked from '../../fixtures/worked-example.json' with { type: 'json' };

function planned(file: unknown): Plan {
  const plan = planFile(file, { why: 'en' });
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  return plan.value;
}

export const demoPlan = planned(demo);
/** The same with its beads ripped away. */
export const rippedPlan = planned({ ...demo, ways: { strip: 'rip' } });
export const workedPlan = planned(worked);

/** Everything at once: long names, 64ths, wide rails, five mid rails, a flat arch whose pivot lies far away. */
export const awkwardPlan = planned({
  format: 1,
  job: 'Pantry, scullery, larder and the long passage behind them 60',
  units: 'in',
  doors: [
    {
      mark: 'WWWWWWWWWWWW',
      opening: { width: '21 63/64', height: '83 61/64' },
      topRail: { width: '5 3/64' },
      stile: { width: '4 1/64' },
      arch: { rise: '49/64', flat: '63/64' },
      midRails: [12, 24, 36, 48, 60].map((centre) => ({ width: '3 1/64', centre: `${centre} 1/64` })),
    },
    { mark: 'B', quantity: 45, opening: { width: '14 3/4', height: '22 1/2' } },
  ],
});

/** Millimetres, an arch, no bead on the second door. */
export const metricPlan = planned({
  format: 1,
  job: 'Werkstatt',
  units: 'mm',
  doors: [
    { mark: 'A', opening: { width: '412.5', height: '761' }, arch: { rise: '44.5', flat: '20' } },
    { mark: 'B', opening: { width: '300', height: '480' }, bead: '0' },
  ],
});
