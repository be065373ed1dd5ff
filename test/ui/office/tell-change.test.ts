// @vitest-environment node

import { expect, test } from 'vitest';
import type { Change } from '#core/job/what-changed.ts';
import { tellChange } from '#ui/office/tell-change.ts';

const CASES: readonly (readonly [Change, string])[] = [
  [{ field: 'due', now: '2026-12-24' }, 'Due: none, then Thu, Dec 24'],
  [{ field: 'defaults.stile.width', was: '2 1/4', now: '2 1/2' }, 'Stile width: 2\u00a01/4, then 2\u00a01/2'],
  [{ mark: 'BENCH', field: 'opening.width', was: '16', now: '17' }, 'BENCH · Opening width: 16, then 17'],
  [{ mark: 'BENCH', field: 'arch.rise', was: '1' }, 'BENCH · Rise: 1, then none'],
  [{ mark: 'BENCH', field: 'quantity', was: '2', now: '3' }, 'BENCH · How many: 2, then 3'],
  [
    { mark: 'BENCH', field: 'midRails[1].width', was: '2', now: '3' },
    'BENCH · Mid rail width (2): 2, then 3',
  ],
  [{ mark: 'BENCH', field: 'door', now: '2' }, 'BENCH added'],
  [{ mark: 'BENCH', field: 'door', was: '2' }, 'BENCH taken away'],
  [{ field: 'measured.thickness', now: '13/16' }, 'Actual size: Stock thickness: none, then 13/16'],
  [
    { field: 'measured.doors.BENCH-1.parts.panel.width', was: '11', now: '10' },
    'Actual size: BENCH-1 · Panel · Width: 11, then 10',
  ],
  [{ field: 'profile' }, 'The tools it is planned with'],
  [{ field: 'moisture.atBuild', was: '8', now: '9' }, 'moisture.atBuild: 8, then 9'],
];

test.each(CASES)('%j is told as %s', (change, words) => {
  expect(tellChange(change)).toBe(words);
});
