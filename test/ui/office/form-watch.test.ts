import { expect, test } from 'vitest';
import { FormWatch } from '#ui/office/form-watch.svelte.ts';

const impossible = {
  path: 'doors[0].survey',
  place: 'row.0.survey',
  mark: 'A',
  label: 'Survey of the opening',
  words: 'these six measures make no opening',
  typing: false,
};

test('that six measures make no opening is told when the last of them is typed, not while it is', () => {
  const watch = new FormWatch(false);
  watch.came('row.0.survey.diagonalDown');
  expect(watch.tells(impossible)).toBe(false);
  watch.went('row.0.survey.diagonalDown');
  expect(watch.tells(impossible)).toBe(true);
  watch.came('row.1.survey.diagonalDown');
  expect(watch.tells(impossible)).toBe(true);
});
