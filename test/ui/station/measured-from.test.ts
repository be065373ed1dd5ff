// @vitest-environment node

import { expect, test } from 'vitest';
import { say } from '#core/words/say.ts';
import { measuredFrom } from '#ui/station/measured-from.ts';

test('a tool, a choice and a count are measured from nowhere; everything else from where its reason says', () => {
  expect(measuredFrom(say('from.none'))).toBe('');
  expect(measuredFrom(say('from.chosen'))).toBe('');
  expect(measuredFrom(say('from.counted', {}, 'pseudo'))).toBe('');
  expect(measuredFrom(say('from.rail-end'))).toBe('the end of the rail');
  expect(measuredFrom('')).toBe('');
});
