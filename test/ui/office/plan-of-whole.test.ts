// @vitest-environment node

import { expect, test } from 'vitest';
import { type Draft, emptyDraft, emptyRow, type Row } from '#ui/office/draft.ts';
import { fileOf } from '#ui/office/draft-file.ts';
import { planOfWhole } from '#ui/office/plan-of-whole.ts';

function form(rows: readonly Partial<Row>[], more: Partial<Draft> = {}): Draft {
  const draft = { ...emptyDraft('in'), job: 'Rope walk', ...more };
  draft.rows = rows.map((row) => ({ ...emptyRow(), width: '16', height: '30', ...row }));
  return draft;
}
const marks = (draft: Draft) => planOfWhole(fileOf(draft))?.doors.map(({ mark }) => mark);

test('finished rows are planned while others are still typed, and before the job has a name', () => {
  expect(marks(form([{ mark: 'A' }, { mark: 'B', height: '' }, { mark: 'C' }]))).toEqual(['A', 'C']);
  expect(marks(form([{ mark: 'A' }, { mark: '', width: '', height: '' }], { job: '' }))).toEqual(['A']);
  expect(marks(form([{ mark: 'A' }, { mark: 'A' }, { mark: 'B', width: '2' }]))).toEqual(['A']);
});

test('with more faults than are told at once every finished row is still found', () => {
  const unfinished = Array.from({ length: 160 }, (_, k) => ({ mark: `U${k}`, height: '' }));
  expect(marks(form([...unfinished, { mark: 'LAST' }]))).toEqual(['LAST']);
});

test('no row is planned by a measure for all that is wrong, and none is where none is finished', () => {
  const draft = form([{ mark: 'A' }]);
  draft.defaults.bead = '3/x';
  expect(marks(draft)).toBeUndefined();
  expect(marks(form([{ mark: 'A', width: '' }]))).toBeUndefined();
});
