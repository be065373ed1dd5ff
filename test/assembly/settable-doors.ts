import fc from 'fast-check';
import { expect } from 'vitest';
import { readMeasured } from '#core/measured/read-measured.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan, PlanDoor } from '#core/plan/plan.ts';
import { settableDoor } from '#core/settable/settable-door.ts';
import { readStep, STEPS } from '#core/settable/step.ts';
import { ratio } from '../core/exact.ts';
import { type HandTally, noHands, putTogetherByHand } from './by-hand.ts';
import { type OddDoor, oddDoor, oddInMillimetres } from './odd-door.ts';

type Units = 'in' | 'mm';
/** Fences and heights are never set coarser than to this. */
export const FINE = { in: ratio('1/64'), mm: ratio('1/10') } as const;
const inStep = (step: string) => ratio(step === '0.5' ? '1/2' : step === '0.1' ? '1/10' : step);

/** The plan of an odd door with what was measured; null where it has faults. */
export function oddPlan({ door, measured, ways = {} }: OddDoor, units: Units): Plan | null {
  const read = readMeasured(measured, units);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const plan = planFile({ format: 1, job: 'x', units, ways, doors: [door] }, { measured: read.value });
  return plan.ok ? plan.value : null;
}

/** A door in its settable numbers at a step as it is typed. */
export function shownAt(door: PlanDoor, units: Units, text: string): PlanDoor {
  const step = readStep(text, units);
  if (step === null) throw new Error(`no step: ${text}`);
  return settableDoor(door, step);
}

/** Draws odd doors and puts each together by hand at every step of its units; fails where one does not close. */
export function oddDoorsClose(units: Units, numRuns: number, seed: number): HandTally {
  const tally = noHands();
  fc.assert(
    fc.property(oddDoor, (fields) => {
      const odd = units === 'in' ? fields : oddInMillimetres(fields);
      const { haunchClearance } = odd;
      for (const door of oddPlan(odd, units)?.doors ?? [])
        for (const step of STEPS[units]) {
          const how = { usual: inStep(step), fine: FINE[units], haunchClearance };
          putTogetherByHand(shownAt(door, units, step), door, how, tally);
        }
    }),
    { numRuns, seed },
  );
  expect(Math.min(tally.arched, tally.midRails, tally.plain, tally.offStep)).toBeGreaterThan(0);
  expect(Math.min(tally.haunches, tally.pared, tally.raised)).toBeGreaterThan(0);
  return tally;
}
