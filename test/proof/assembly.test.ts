import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { assemble, noDoors } from '../assembly/assemble.ts';
import { inMillimetres } from '../assembly/in-millimetres.ts';
import { STEPS } from '#core/settable/step.ts';
import { oddDoorsClose } from '../assembly/settable-doors.ts';
import { randomDoor, ways } from '../assembly/random-door.ts';

test.each(['in', 'mm'] as const)('thousands of random doors in %s close without gap or overlap', (units) => {
  const tally = noDoors();
  const seed = Date.now() & 0x7fffffff;
  console.log(`${units}: seed ${seed}`);
  fc.assert(
    fc.property(randomDoor, ways, (fields, ways) => {
      const door = units === 'in' ? fields : { ...(inMillimetres(fields) as typeof fields), mark: 'A' };
      const planned = planFile({ format: 1, job: 'x', units, ways, doors: [door] });
      if (planned.ok)
        for (const each of planned.value.doors) assemble(each, tally, door.tenon.haunchClearance);
    }),
    { numRuns: 6000, seed },
  );
  console.log(`${units}: ${JSON.stringify(tally)}`);
  expect(tally.made).toBeGreaterThan(2000);
});

test.each(['in', 'mm'] as const)(
  'thousands of odd doors in %s close at every step, put together by hand from the numbers as they are shown',
  (units) => {
    const seed = Number(process.env.SEED ?? Date.now() & 0x7fffffff);
    console.log(`${units}: seed ${seed}`);
    const tally = oddDoorsClose(units, 12_000, seed);
    console.log(`${units}: ${JSON.stringify(tally)}`);
    expect(tally.made).toBeGreaterThan(STEPS[units].length * 5000);
  },
  1_200_000,
);
