import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };

const crooked = {
  widthBottom: '16 1/8',
  widthTop: '16',
  heightLeft: '30 1/8',
  heightRight: '30 1/4',
  diagonalUp: '34 3/16',
  diagonalDown: '34 1/8',
};
const others = [
  planFile({
    format: 1,
    job: 'Others',
    units: 'in',
    doors: [
      { mark: 'PLAIN', opening: { width: '16', height: '30' }, bead: '0' },
      { mark: 'ROUND', opening: { width: '16', height: '30' }, arch: { rise: '5 1/4', flat: '1/2' } },
      {
        mark: 'CROOKED',
        opening: { width: '16', height: '30' },
        oversize: { width: '1/2', height: '1/2' },
        tenon: { outerSetback: '3/4' },
        survey: crooked,
      },
      { mark: 'TALL', opening: { width: '16', height: '96' }, midRails: [{ width: '3', centre: '40' }] },
    ],
  }),
  planFile({
    format: 1,
    job: 'Metric',
    units: 'mm',
    doors: [{ mark: 'M', opening: { width: 420, height: 900 } }],
  }),
];
const planned = planFile(demo);
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
/** The demo job, and a door of another shape each: no bead, an exact semicircle, a crooked opening, millimetres. */
export const plans: readonly Plan[] = [planned, ...others].map((each) => {
  if (!each.ok) throw new Error(JSON.stringify(each.faults));
  return each.value;
});
