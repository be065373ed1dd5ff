import { expect, test } from 'vitest';
import type { PlanDoor } from '#core/plan/plan.ts';
import { STEPS } from '#core/settable/step.ts';
import { ratio } from '../core/exact.ts';
import { noHands, putTogetherByHand } from './by-hand.ts';
import { FINE, oddDoorsClose, oddPlan, shownAt } from './settable-doors.ts';
import { eachToTheNearest } from './to-the-nearest.ts';

test.each(['in', 'mm'] as const)(
  'odd doors in %s close at every step, put together by hand from the numbers as they are shown',
  (units) => {
    const seed = Number(process.env.SEED ?? Date.now() & 0x7fffffff);
    console.log(`${units}: seed ${seed}`);
    const { made } = oddDoorsClose(units, 110, seed);
    expect(made).toBeGreaterThan(STEPS[units].length * 25);
  },
  60_000,
);

/** Fixed doors whose numbers, each brought to the nearest by itself, do not meet any more. */
const SAMPLES: readonly {
  readonly meets: RegExp;
  readonly door: Record<string, unknown>;
  readonly thickness: string;
}[] = [
  {
    // S 10 39/64 is 10 5/8 to the nearest 1/16, rails of 13 7/64 are 13 1/8, their stops 1 1/4 each: right by luck. With a
    // tenon of 1 9/32 the stop is 1 5/16, the rail 13 3/16: 10 9/16 from shoulder to shoulder.
    meets: /between its shoulders/,
    thickness: '3/4',
    door: {
      opening: { width: '14 49/64', height: '22' },
      stile: { width: '2 17/64' },
      tenon: { length: '1 9/32', outerSetback: '3/8', innerSetback: '1/4', haunchClearance: '1/32' },
    },
  },
  {
    // A mitre at 3 17/64 is 3 1/4 to the nearest, one at 3 19/64 is 3 5/16: past its line.
    meets: /past its line/,
    thickness: '3/4',
    door: { opening: { width: '15', height: '22' }, bottomRail: { width: '2 51/64' } },
  },
  {
    // Walls of 33/128 are 17/64 to the nearest 1/64 and 1/4 to the nearest 1/16, the groove 1/4: 49/64 less 1/2 does not enter it.
    meets: /tenon does not enter/,
    thickness: '49/64',
    door: { opening: { width: '15', height: '22' } },
  },
];

test.each(SAMPLES)(
  'numbers brought to the nearest each by itself do not close: $meets',
  ({ meets, door, thickness }) => {
    const file = {
      door: { mark: 'A', ...door },
      measured: { thickness, grooveWidth: '1/4' },
      haunchClearance: '1/32',
    };
    const exact = oddPlan(file, 'in')?.doors[0];
    if (exact === undefined) throw new Error('the door has faults');
    const usual = ratio('1/16');
    const how = { usual, fine: FINE.in, haunchClearance: '1/32' };
    const built = (shown: PlanDoor) => () => putTogetherByHand(shown, exact, how, noHands());
    expect(built(shownAt(exact, 'in', '1/16'))).not.toThrow();
    expect(built(eachToTheNearest(exact, usual))).toThrow(meets);
  },
);
