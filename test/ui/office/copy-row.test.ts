// @vitest-environment node

import { expect, test } from 'vitest';
import { copyRow, nextMark } from '#ui/office/copy-row.ts';
import { emptyMidRail, emptyRow, type Row } from '#ui/office/draft.ts';

test.each([
  ['A1', [], 'A2'],
  ['A1', ['A2', 'A3'], 'A4'],
  ['H-09', [], 'H-10'],
  ['99', [], '100'],
  ['A', [], 'B'],
  ['2-a', ['2-b'], '2-c'],
  ['Z', [], ''],
  ['Hall', [], ''],
  ['', [], ''],
  ['ABCDEFGHIJ99', [], ''],
  ['Y', ['Z'], ''],
] as const)('after the mark “%s”, with %j taken, comes “%s”', (mark, taken, next) => {
  expect(nextMark(mark, new Set(['', mark, ...taken]))).toBe(next);
});

test('a copied row has all that was typed but the survey of another opening, and is changed without the first', () => {
  const row: Row = {
    ...emptyRow(),
    mark: 'A1',
    quantity: '3',
    width: '16',
    height: '30',
    hinge: 'right',
    arched: true,
    rise: '1',
    flat: '3/4',
    midRails: [{ ...emptyMidRail(), width: '3', centre: '15' }],
    ownMidRails: true,
    species: 'ash, white',
    other: { reveal: '1/8' },
  };
  Object.assign(row.own, { horn: '1', 'oversize.width': '1/4', 'survey.widthTop': '16' });
  const copy = copyRow(row, [row]);
  const { key: _key, midRails, ...rest } = copy;
  const { key: _was, midRails: before, ...same } = row;
  expect(rest).toEqual({ ...same, mark: 'A2', own: { ...same.own, 'survey.widthTop': '' } });
  expect(midRails.map(({ width, centre }) => [width, centre])).toEqual([['3', '15']]);
  expect(new Set([copy.key, row.key]).size).toBe(2);
  expect(midRails[0]?.key).not.toBe(before[0]?.key);
  copy.own.horn = '2';
  Object.assign(midRails[0] ?? {}, { width: '4' });
  expect([row.own.horn, before[0]?.width]).toEqual(['1', '3']);
});
