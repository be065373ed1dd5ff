// @vitest-environment node

import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { speakFaults } from '#core/telling/speak-faults.ts';
import { type Draft, emptyDraft, emptyMidRail, emptyRow, type Row } from '#ui/office/draft.ts';
import { fileOf } from '#ui/office/draft-file.ts';
import { eachOwn, type OwnPath } from '#ui/office/own-fields.ts';
import { tellFaults } from '#ui/office/tell-fault.ts';

function form(rows: readonly Partial<Row>[], defaults: Partial<Draft['defaults']> = {}): Draft {
  const draft = { ...emptyDraft('in'), job: 'Rope walk' };
  Object.assign(draft.defaults, defaults);
  draft.rows = rows.map((row) => ({ ...emptyRow(), width: '16', height: '30', ...row }));
  return draft;
}
const own = (given: Partial<Row['own']>) => eachOwn((path: OwnPath) => given[path] ?? '');
function told(draft: Draft): string[] {
  const planned = planFile(fileOf(draft));
  return (planned.ok ? [] : tellFaults(speakFaults(planned.faults), draft)).map(
    ({ place, mark, label, words }) => `${place} | ${mark} | ${label} | ${words}`,
  );
}

test('a width of 2 is told at the width and nothing at the good height of 28', () => {
  const [first, ...rest] = told(form([{ mark: 'A', width: '2', height: '28' }]));
  expect(first).toMatch(/^row\.0\.width \| A \| Opening width \| the stiles of 2\u00a01\/4 leave/);
  expect(rest.filter((each) => each.includes('height'))).toEqual([]);
});

test('an empty mark, an empty height and a comma are told at their fields in plain words', () => {
  expect(told(form([{ mark: '' }, { mark: 'B', height: '', width: '14,5' }]))).toEqual([
    'row.0.mark | Row 1 | Mark | Still empty.',
    'row.1.width | B | Opening width | Type a point, not a comma: 14.5.',
    'row.1.height | B | Opening height | Still empty.',
  ]);
});

test('a fault that several doors share by a measure of the whole job is told there once, with their marks', () => {
  const [one, ...rest] = told(form([{ mark: 'A' }, { mark: 'B' }], { bead: '3/8' }));
  expect(one).toMatch(/^defaults\.bead \| A, B \| Bead \| a bead of 3\/8 is deeper than the wall/);
  expect(rest).toEqual([]);
});

test('a mark that stands twice, a quantity and a mid rail are told where they were typed', () => {
  const rail = { ...emptyMidRail(), width: '3', centre: '' };
  expect(
    told(form([{ mark: 'A' }, { mark: 'A', quantity: 'two', midRails: [rail], ownMidRails: true }])),
  ).toEqual([
    'row.1.mark | A | Mark | Mark A is used twice: give a quantity there, or another mark here.',
    'row.1.quantity | A | How many | A whole number from 1 to 10,000.',
  ]);
  expect(told(form([{ mark: 'A', midRails: [rail], ownMidRails: true }]))).toEqual([
    'row.0.midRails.0.centre | A | Mid rail’s center, from the bottom | Still empty.',
  ]);
});

test('what a file brought for one door alone is told below that door’s fields', () => {
  const [one] = told(form([{ mark: 'A', other: { mortise: { endPlay: 'wide' } } }]));
  expect(one).toBe('row.0. | A | Mortise end play | Not a length: type it as 14\u00a03/4, 14-3/4 or 14.75.');
});

test.each(['16-1/2"', '16 1/2', '16.5', `1' 4 1/2"`])('%s is taken without a word', (width) => {
  expect(told(form([{ mark: 'A', width }]))).toEqual([]);
});

test('a bead of the door’s own is told in its row, not at the one of the whole job', () => {
  const [one, ...rest] = told(form([{ mark: 'A', own: own({ bead: '3/8' }) }, { mark: 'B' }]));
  expect(one).toMatch(/^row\.0\.bead \| A \| Bead \| a bead of 3\/8 is deeper than the wall/);
  expect(rest).toEqual([]);
});

test.each(['oversize.width', 'bottomRail.width', 'topRail.width', 'thickness', 'horn'] as const)(
  'a fault in a door’s own %s is told under that field of its row',
  (path) => {
    const [one, ...rest] = told(form([{ mark: 'A', own: own({ [path]: '1,5' }) }, { mark: 'B' }]));
    expect(one).toMatch(
      new RegExp(`^row\\.0\\.${path} \\| A \\| .+ \\| Type a point, not a comma: 1\\.5\\.$`),
    );
    expect(rest).toEqual([]);
  },
);

test('of a survey, what is not measured yet is told at its measures, and six that make no opening below them', () => {
  const measured = {
    'survey.widthBottom': '16',
    'survey.widthTop': '16',
    'survey.heightLeft': '30',
    'survey.heightRight': '30',
  };
  expect(told(form([{ mark: 'A', own: own(measured) }]))).toEqual([
    'row.0.survey.diagonalUp | A | Diagonal to top right | Still empty.',
    'row.0.survey.diagonalDown | A | Diagonal to top left | Still empty.',
  ]);
  const impossible = { ...measured, 'survey.diagonalUp': '90', 'survey.diagonalDown': '34' };
  expect(told(form([{ mark: 'A', own: own(impossible) }]))).toEqual([
    expect.stringMatching(
      /^row\.0\.survey \| A \| Survey of the opening \| these six measures make no opening/,
    ),
  ]);
});
