// @vitest-environment node

import { expect, test } from 'vitest';
import type { AcceptedMark, JobProgress } from '#core/marks/mark.ts';
import { indexParts } from '#core/marks/live-plan.ts';
import { emptyProgress, foldMarks } from '#core/marks/progress.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { BoardRows } from '#ui/board/rows.ts';
import { lastDone } from '#ui/board/take-back.ts';

const planned = planFile({
  format: 1,
  job: 'Rope walk',
  units: 'in',
  doors: [{ mark: 'A', opening: { width: '16', height: '30' } }],
});
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const plan = planned.value;
const door = plan.doors[0];
if (door === undefined) throw new Error('no door');

/** The progress after these stages were marked done, or undone, one a minute. */
function after(
  marks: readonly (readonly [part: string, stage: string, mark?: 'done' | 'undo'])[],
): JobProgress {
  const log = marks.map(([part, stage, mark = 'done'], k): AcceptedMark => {
    const found = door?.parts.find((each) => each.part === part);
    const station = [...(found?.stages ?? []), ...(door?.stages ?? [])].find(
      (each) => each.stage === stage,
    )?.station;
    if (found === undefined || station === undefined) throw new Error(`${part} ${stage}`);
    const at = new Date(Date.UTC(2026, 10, 2, 8, k)).toISOString();
    return {
      seq: k + 1,
      received: at,
      job: plan.id,
      door: 'A-1',
      part,
      mark: { id: String(k), code: found.code, station, stage, mark, at },
    };
  });
  return foldMarks(emptyProgress(plan.id), log);
}
function row(progress: JobProgress) {
  const line = {
    id: plan.id,
    job: plan.job,
    units: plan.units,
    doors: 1,
    parts: 5,
    left: 1,
    revision: 1,
    hash: '',
  };
  const index = indexParts(plan);
  const found = new BoardRows().of([
    { line, plan, index, file: undefined, asMarked: [], confirmed: progress, progress },
  ])[0];
  if (found === undefined) throw new Error('no row');
  return found;
}
const all = (part: string) =>
  (door.parts.find((each) => each.part === part)?.stages ?? []).map(({ stage }) => [part, stage] as const);

test('a door waits for every part that is not done, those furthest behind first', () => {
  const fresh = row(after([]));
  expect(fresh.waitsFor).toHaveLength(5);
  const ahead = after(
    door.parts.filter(({ part }) => part !== 'stile-right').map(({ part }) => [part, 'mill'] as const),
  );
  expect(row(ahead).stage).toBe('mill');
  expect(row(ahead).waitsFor.map(({ part }) => part)).toEqual([
    'stile-right',
    'stile-left',
    'rail-bottom',
    'rail-top',
    'panel',
  ]);
  expect(row(after([...all('panel'), ...all('rail-top')])).waitsFor.map(({ part }) => part)).toEqual([
    'stile-left',
    'stile-right',
    'rail-bottom',
  ]);
});

test('a door with all its parts done waits for none of them', () => {
  const progress = after(door.parts.flatMap(({ part }) => all(part)));
  expect(row(progress)).toMatchObject({ stage: 'dryfit', waitsFor: [] });
});

test('what can be taken back is what was done last, not what stands under something done later', () => {
  const part = door.parts.find((each) => each.part === 'rail-bottom');
  if (part === undefined) throw new Error('no rail');
  const found = { door, part };
  expect(lastDone(found, after([]))).toBeNull();
  expect(
    lastDone(
      found,
      after([
        ['rail-bottom', 'mill'],
        ['rail-bottom', 'bead'],
      ]),
    ),
  ).toEqual({
    stage: 'bead',
    station: 'router-table',
    whole: false,
  });
  const undone = after([
    ['rail-bottom', 'mill'],
    ['rail-bottom', 'bead'],
    ['rail-bottom', 'bead', 'undo'],
  ]);
  expect(lastDone(found, undone)).toMatchObject({ stage: 'mill', station: 'milling' });
  const fitted = after([...door.parts.flatMap(({ part: name }) => all(name)), ['rail-bottom', 'dryfit']]);
  expect(lastDone(found, fitted)).toEqual({ stage: 'dryfit', station: 'assembly', whole: true });
});
