import { expect, test } from 'vitest';
import { tellAllow } from '#core/telling/tell-allow.ts';

const plain = (printed: string) => printed;

test.each([
  [
    'depthFromEdge',
    { less: '1/16', more: '9/16', lessBy: 'a', moreBy: 'b' },
    'Up to 1/16 shallower or 1/16 deeper.',
  ],
  [
    'depthFromEdge',
    { less: '0', more: '3/64', lessBy: 'it bottoms', moreBy: '' },
    'Up to 3/64 deeper, never shallower: it bottoms.',
  ],
  [
    'start',
    { less: '5/32', more: '0', lessBy: '', moreBy: 'it meets' },
    'Up to 1/16 nearer the end, never farther from the end: it meets.',
  ],
  [
    'height',
    { less: '0', more: '1/256', lessBy: 'tight', moreBy: '' },
    'Up to a hair higher, never lower: tight.',
  ],
  [
    'sightEdge',
    { less: '0', more: '0', lessBy: 'they meet', moreBy: 'they meet' },
    'To the line: they meet.',
  ],
  ['width', { less: '1/30', more: '1/8', lessBy: '', moreBy: '' }, 'Up to 1/32 narrower or 1/16 wider.'],
] as const)('%s off by %o is told in a sentence, never by more than there is', (name, allow, words) => {
  expect(tellAllow(name, allow, 'in', plain)).toBe(words);
});

test('in millimetres it is told down to a tenth, and never more than 1.5', () => {
  expect(tellAllow('depth', { less: '4/5', more: '14', lessBy: '', moreBy: '' }, 'mm', plain)).toBe(
    'Up to 4/5 shallower or 1\u00a01/2 deeper.',
  );
  expect(tellAllow('depth', { less: '1/30', more: '0', lessBy: '', moreBy: 'x' }, 'mm', plain, 'de')).toBe(
    'Bis eine Haaresbreite flacher, nie tiefer: x.',
  );
});
