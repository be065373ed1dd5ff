// @vitest-environment node

import { expect, test } from 'vitest';
import type { Disagreement } from '#core/measured/disagreements.ts';
import { shownInstant } from '#core/words/day.ts';
import { cutChanges } from '#ui/shared/cut-otherwise.ts';

const length = { part: 'rail-top', stage: 'mill', name: 'length', was: '13 3/4', now: '14' };
const one = (door: string, more: Partial<Disagreement> = length): Disagreement => ({
  code: `${door} ${more.part ?? ''}`,
  door,
  stage: 'mill',
  name: 'length',
  was: '1',
  ...more,
});

test('the same change of several doors is told once with their names, a stage that is no more once whatever it set', () => {
  const bead = { part: 'stile-left', stage: 'bead' };
  const told = cutChanges([
    one('A-1'),
    one('A-2'),
    one('A-1', { ...length, part: 'rail-bottom' }),
    one('A-2', { ...bead, name: 'bead', was: '3/16' }),
    one('A-2', { ...bead, name: 'fillet', was: '1/16' }),
  ]);
  expect(told.map(({ doors, part, stage, count, setting }) => [doors, part, stage, count, setting])).toEqual([
    [['A-1', 'A-2'], 'rail-top', 'mill', 2, { name: 'length', was: '13 3/4', now: '14' }],
    [['A-1'], 'rail-bottom', 'mill', 1, { name: 'length', was: '13 3/4', now: '14' }],
    [['A-2'], 'stile-left', 'bead', 2, undefined],
  ]);
});

test('two moments of one minute are told apart by their seconds where that is asked for', () => {
  const [first, second] = ['2026-11-26T09:14:03.512Z', '2026-11-26T09:14:41.007Z'];
  expect(shownInstant(first)).toBe(shownInstant(second));
  expect(shownInstant(first, 'second')).not.toBe(shownInstant(second, 'second'));
});
