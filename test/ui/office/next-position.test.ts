// @vitest-environment node

import { expect, test } from 'vitest';
import { nextPosition } from '#ui/office/next-position.ts';

test.each([
  [1, 10, 30, 11],
  [11, 19, 30, 30],
  [11, 20, 30, 1],
  [25, 12, 24, 13],
  [5, 90, 30, 5],
  [1, 30, 30, 1],
])(
  'from label %i on, %i printed on sheets of %i: the next free one is %i',
  (from, count, positions, next) => {
    expect(nextPosition(from, count, positions)).toBe(next);
  },
);
