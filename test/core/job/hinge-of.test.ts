import { expect, test } from 'vitest';
import { hingeOf } from '#core/job/hinge-of.ts';

test('a door hangs where it says itself, else where its job says, else on the left', () => {
  const file = { defaults: { hinge: 'right' }, doors: [{ mark: 'A' }, { mark: 'B', hinge: 'left' }] };
  expect([hingeOf(file, 'A'), hingeOf(file, 'B')]).toEqual(['right', 'left']);
  expect(hingeOf({ doors: [{ mark: 'A' }] }, 'A')).toBe('left');
});

test('without a file, or without the door in it, no side is said', () => {
  for (const file of [undefined, null, 'x', {}, { doors: 3 }, { doors: [null] }, { doors: [{ mark: 'B' }] }])
    expect(hingeOf(file, 'A')).toBeUndefined();
});
