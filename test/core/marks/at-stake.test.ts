import { expect, test } from 'vitest';
import { atStake } from '#core/marks/at-stake.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import { emptyProgress } from '#core/marks/progress.ts';

const at = { seq: 1, id: 'a', at: '', station: 'milling' as const };
const part = (code: string, door: string, stages: readonly string[], more: object = {}): [string, object] => [
  code,
  {
    code,
    door,
    part: code,
    number: 0,
    done: Object.fromEntries(stages.map((each) => [each, at])),
    proved: {},
    ...more,
  },
];

test('what goes with a job is counted: its marks, the doors begun, and the finished ones', () => {
  const progress = {
    job: 'x',
    seq: 9,
    parts: Object.fromEntries([
      part('a', 'A-1', ['mill', 'bead']),
      part('b', 'A-2', ['mill']),
      part('c', 'A-3', [], { spoiled: { ...at, stage: 'mill' } }),
      part('d', 'A-4', []),
    ]),
    doors: { 'A-1': { done: { dryfit: at, glue: at, trim: at } }, 'A-2': { done: {} } },
  } as unknown as JobProgress;
  expect(atStake(progress)).toEqual({ marks: 7, begun: 2, finished: 1 });
  expect(atStake(emptyProgress('x'))).toEqual({ marks: 0, begun: 0, finished: 0 });
});
