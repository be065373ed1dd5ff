import { expect, test } from 'vitest';
import { exactText } from '#core/length/exact-text.ts';

test.each([
  ['3.000000', '3'],
  ['2.957875', '2.957875'],
  ['9.655000', '9.655'],
  ['-0.093750', '-0.09375'],
  ['100', '100'],
  ['14 3/4', '14\u00a03/4'],
  ['10.000000', '10'],
])('%s is told as %s', (printed, told) => {
  expect(exactText(printed)).toBe(told);
});
