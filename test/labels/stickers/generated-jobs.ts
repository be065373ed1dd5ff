import fc from 'fast-check';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';

/** Whole 64ths of an inch, as people write them. */
function sixtyFourths(count: number): string {
  const [whole, rest] = [Math.floor(count / 64), count % 64];
  return rest === 0 ? String(whole) : `${whole} ${rest}/64`;
}

/** An odd number of 64ths between two whole inches, so that every figure of the plan is one. */
const odd64ths = (from: number, to: number) =>
  fc.integer({ min: from * 32, max: to * 32 - 1 }).map((half) => sixtyFourths(half * 2 + 1));

const half = (from: number, to: number) =>
  fc.integer({ min: from * 2, max: to * 2 }).map((n) => String(n / 2));

const names = fc.constantFrom(
  'Millbrook boot room',
  'W'.repeat(60),
  'Second floor, north side: pantry, scullery and boot room 1/2',
  'Æøå größte Küche – été',
);
const marks = fc.constantFrom('WWWWWWWWWWWW', 'A', 'LOCKER-1/2', 'Größe 12');

const inches = fc.record({
  width: odd64ths(16, 30),
  height: odd64ths(24, 70),
  stile: odd64ths(2, 4),
  rise: fc.option(odd64ths(1, 2), { nil: null }),
  mid: fc.boolean(),
  quantity: fc.integer({ min: 1, max: 2 }),
  job: names,
  mark: marks,
});
const millimetres = fc.record({
  width: half(400, 760),
  height: half(600, 1800),
  stile: half(50, 100),
  rise: fc.option(half(20, 45), { nil: null }),
  mid: fc.boolean(),
  quantity: fc.integer({ min: 1, max: 2 }),
  job: names,
  mark: marks,
});

/** Plans of random jobs that can be built: longest names, 64ths everywhere, millimetres. The same seed gives the same. */
export function generatedPlans(seed: number, count: number): Plan[] {
  const plans: Plan[] = [];
  const drafts = fc.sample(
    fc.oneof(
      inches.map((each) => ({ units: 'in' as const, ...each })),
      millimetres.map((each) => ({ units: 'mm' as const, ...each })),
    ),
    { seed, numRuns: count * 20 },
  );
  for (const { units, width, height, stile, rise, mid, quantity, job, mark } of drafts) {
    if (plans.length === count) break;
    const inch = units === 'in';
    const planned = planFile({
      format: 1,
      job,
      units,
      doors: [
        {
          mark,
          quantity,
          opening: { width, height },
          stile: { width: stile },
          topRail: { width: stile },
          bottomRail: { width: inch ? '3 1/64' : '76.5' },
          panel: { thickness: inch ? '31/64' : '12.5' },
          arch: rise === null ? null : { rise, flat: inch ? '3/4' : '20' },
          midRails: mid ? [{ width: inch ? '3 3/64' : '76.5', centre: inch ? '11 1/64' : '280.5' }] : [],
        },
      ],
    });
    if (planned.ok) plans.push(planned.value);
  }
  if (plans.length < count) throw new Error(`seed ${seed} gave ${plans.length} jobs of ${count}`);
  return plans;
}
