// @vitest-environment node

import { expect, test } from 'vitest';
import { tellLength } from '#ui/shared/tell-length.ts';

test.each(['16-1/2"', '14 3/4', '3/4', '14.75', `1' 2 3/4"`, ' 16 '])(
  '%s is a length and nothing is said',
  (text) => {
    expect(tellLength(text, 'in')).toBeNull();
  },
);

test.each([
  ['', 'in', 'Still empty.'],
  ['14,75', 'in', 'Type a point, not a comma: 14.75.'],
  ['375,5', 'mm', 'Type a point, not a comma: 375.5.'],
  ['wide', 'in', 'Not a length: type it as 14\u00a03/4, 14-3/4 or 14.75.'],
  ['1,2,3', 'mm', 'Not a length: type it as 375 or 375.5.'],
  ['14"', 'mm', 'This job is in millimeters: leave the foot and inch marks out.'],
  ['1/0', 'in', 'The bottom of a fraction cannot be 0.'],
  ['99999', 'in', 'Longer than anything here: 1,000\u00a0ft at most.'],
] as const)('of “%s” in %s it says: %s', (text, units, told) => {
  expect(tellLength(text, units)).toBe(told);
});
