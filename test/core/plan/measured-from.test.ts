import { expect, test } from 'vitest';
import { measuredFrom } from '#core/plan/measured-from.ts';

test('a tool, a choice and a count are measured from nothing, in whatever language their words are', () => {
  for (const datum of ['none', 'chosen', 'counted'])
    expect(measuredFrom({ from: 'nicht gemessen', datum })).toBeNull();
  expect(measuredFrom({ from: 'the end of the rail', datum: 'rail-end' })).toBe('the end of the rail');
  expect(measuredFrom(undefined)).toBeNull();
});
