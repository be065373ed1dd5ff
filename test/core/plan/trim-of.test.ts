import { expect, test } from 'vitest';
import { trimOf } from '#core/plan/trim-of.ts';

test('each side has what the plan says of it; a plan of an older version says it for both sides alike', () => {
  const trim = { left: '1/16', right: '1/8', bottom: '1/4', top: '0' };
  expect(trimOf({ trim })).toEqual(trim);
  expect(trimOf({ trimEachSide: '1/16', trimEachEnd: '1/8' })).toEqual({
    left: '1/16',
    right: '1/16',
    bottom: '1/8',
    top: '1/8',
  });
});
