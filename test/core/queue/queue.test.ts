import { expect, test } from 'vitest';
import { indexParts } from '#core/marks/live-plan.ts';
import type { AcceptedMark, JobProgress } from '#core/marks/mark.ts';
import { emptyProgress, foldMarks } from '#core/marks/progress.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { PlanStage } from '#core/plan/plan.ts';
import { queueGroups } from '#core/queue/groups.ts';
import { proofKey, provedBy } from '#core/queue/proved.ts';
import { flatSettings, settingKey, settingsChanged } from '#core/queue/setting-key.ts';
import { type QueueJob, type Waiting, waitingAt } from '#core/queue/waiting.ts';

function job(name: string, due: string | undefined, doors: readonly object[], units = 'in'): QueueJob {
  const planned = planFile({ format: 1, job: name, units, doors });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const plan = planned.value;
  return {
    plan,
    index: indexParts(plan),
    progress: emptyProgress(plan.id),
    line: due === undefined ? {} : { due },
  };
}

const square = { opening: { width: '16', height: '30' } };
const loft = job('Sail loft', '2026-12-01', [{ mark: 'A', quantity: 2, ...square }]);

function after(
  queueJob: QueueJob,
  marks: readonly [string, string, AcceptedMark['mark']['mark']][],
): QueueJob {
  const accepted = marks.map(([code, stage, kind], k): AcceptedMark => {
    const place = queueJob.index.parts.get(code);
    if (place === undefined) throw new Error(`no part ${code}`);
    return {
      seq: k + 1,
      received: `2026-11-25T08:00:0${k}Z`,
      job: queueJob.plan.id,
      ...place,
      mark: {
        id: `m${k}`,
        code,
        station: 'milling',
        stage,
        mark: kind,
        by: 'P-WREN',
        at: '2026-11-25T08:00:00Z',
      },
    };
  });
  const progress: JobProgress = foldMarks(queueJob.progress, accepted);
  return { ...queueJob, progress };
}

function named(queueJob: QueueJob, door: number, name: string): string {
  const code = queueJob.plan.doors[door]?.parts.find(({ part }) => part === name)?.code;
  if (code === undefined) throw new Error(`no ${name}`);
  return code;
}

test('at the start everything waits at milling, and parts cut alike share a group across doors and sides', () => {
  const groups = queueGroups(waitingAt('milling', [loft]));
  const stiles = groups.find(({ waiting }) => waiting[0].part.part === 'stile-left');
  expect(stiles?.waiting.map(({ door, part }) => `${door.door} ${part.part}`)).toEqual([
    'A-1 stile-left',
    'A-1 stile-right',
    'A-2 stile-left',
    'A-2 stile-right',
  ]);
  expect(waitingAt('mortiser', [loft])).toEqual([]);
});

test('a part leaves one station’s queue and joins the next one’s when it is marked', () => {
  const moved = after(loft, [[named(loft, 0, 'rail-top'), 'mill', 'done']]);
  expect(waitingAt('milling', [moved])).toHaveLength(waitingAt('milling', [loft]).length - 1);
  expect(waitingAt('router-table', [moved]).map(({ part, stage }) => [part.part, stage.stage])).toEqual([
    ['rail-top', 'bead'],
  ]);
});

test('a whole door waits once for its dry fit, whatever the number of its parts', () => {
  const door = loft.plan.doors[0];
  const all = (door?.parts ?? []).flatMap(({ code, stages }) =>
    stages.map(({ stage }): [string, string, 'done'] => [code, stage, 'done']),
  );
  const ready = {
    ...loft,
    progress: foldMarks(
      loft.progress,
      all.map(([code, stage], k) => ({
        seq: k + 1,
        received: '2026-11-25T08:00:00Z',
        job: loft.plan.id,
        door: 'A-1',
        part: loft.index.parts.get(code)?.part ?? '',
        mark: {
          id: `d${k}`,
          code,
          station: 'milling' as const,
          stage,
          mark: 'done' as const,
          at: '2026-11-25T08:00:00Z',
        },
      })),
    ),
  };
  expect(waitingAt('assembly', [ready]).map(({ door, stage }) => `${door.door} ${stage.stage}`)).toEqual([
    'A-1 dryfit',
  ]);
});

/** A stage with some settings of its own, whatever its kind would have. */
const stage = (name: string, settings: Readonly<Record<string, string>>): PlanStage =>
  ({ stage: name, station: 'mortiser', settings, after: [] }) as unknown as PlanStage;
const first = loft.plan.doors[0];
const blank = first?.parts[0];
if (first === undefined || blank === undefined) throw new Error('no door');
const waits = (name: string, settings: Readonly<Record<string, string>>, due?: string): Waiting => ({
  job: name,
  ...(due === undefined ? {} : { due }),
  units: 'in',
  door: first,
  part: blank,
  stage: stage('mortise', settings),
});

test('the next group is the one that touches the fewest settings; ties go by due date, then by who waited first', () => {
  const standing = flatSettings('in', stage('mortise', { fence: '1/4', start: '1', stop: '3' }));
  const order = queueGroups(
    [
      waits('two changes', { fence: '1/4', start: '2', stop: '4' }, '2026-11-26'),
      waits('one change, late', { fence: '1/4', start: '1', stop: '5' }, '2026-12-20'),
      waits('one change, no date', { fence: '1/4', start: '1', stop: '7' }),
      waits('one change, soon', { fence: '1/4', start: '1', stop: '6' }, '2026-12-02'),
      waits('stands already', { fence: '1/4', start: '1', stop: '3' }, '2026-12-31'),
    ],
    standing,
  );
  expect(order.map(({ waiting, changes }) => [waiting[0].job, changes])).toEqual([
    ['stands already', 0],
    ['one change, soon', 1],
    ['one change, late', 1],
    ['one change, no date', 1],
    ['two changes', 2],
  ]);
});

test('with nothing set yet the earliest date comes first', () => {
  const order = queueGroups([
    waits('no date', { fence: '1' }),
    waits('late', { fence: '2' }, '2027-01-01'),
    waits('soon', { fence: '3' }, '2026-12-01'),
  ]);
  expect(order[0]?.waiting[0].job).toBe('soon');
});

test('a screen that shows the first two groups is given those that come first of all', () => {
  const waiting = [
    waits('far', { fence: '1', stop: '5' }),
    waits('middle', { fence: '2', stop: '6' }, '2027-01-01'),
    waits('near', { fence: '2', stop: '5' }),
  ];
  const standing = flatSettings('in', stage('mortise', { fence: '2', stop: '5' }));
  expect(queueGroups(waiting, standing, 2)).toEqual(queueGroups(waiting, standing).slice(0, 2));
  expect(queueGroups(waiting, standing, 2).map(({ waiting }) => waiting[0].job)).toEqual(['near', 'middle']);
});

test('the same figure in inches and in millimetres is another setting, and so is another stage', () => {
  const mortise = stage('mortise', { fence: '6' });
  expect(settingKey('in', mortise)).not.toBe(settingKey('mm', mortise));
  expect(settingKey('in', mortise)).not.toBe(settingKey('in', stage('pare', { fence: '6' })));
  expect(settingKey('in', stage('a', { x: '1', y: '2' }))).toBe(
    settingKey('in', stage('a', { y: '2', x: '1' })),
  );
  expect(settingsChanged(flatSettings('in', mortise), flatSettings('in', stage('pare', { stop: '6' })))).toBe(
    3,
  );
});

test('a set-up proved on one part counts for every part set alike, at milling whatever its length, with who and when, and for no other', () => {
  const left = named(loft, 0, 'stile-left');
  const proved = after(loft, [[left, 'mill', 'proved']]);
  const keyOf = (name: string) => {
    const mill = proved.plan.doors[1]?.parts.find(({ part }) => part === name)?.stages[0];
    if (mill === undefined) throw new Error(name);
    return proofKey('in', mill);
  };
  expect(provedBy(keyOf('stile-right'), [proved])).toMatchObject({
    by: 'P-WREN',
    at: '2026-11-25T08:00:00Z',
  });
  // As wide and thick as the stile, of another length; the bottom rail is wider.
  expect(provedBy(keyOf('rail-top'), [proved])).not.toBeNull();
  expect(provedBy(keyOf('rail-bottom'), [proved])).toBeNull();
  expect(proofKey('in', stage('groove', { length: '1' }))).not.toBe(
    proofKey('in', stage('groove', { length: '2' })),
  );
  expect(provedBy(keyOf('stile-right'), [loft])).toBeNull();
});

test('of two proofs the one with the later number counts, whatever clock its time comes from', () => {
  const [left, right] = [named(loft, 0, 'stile-left'), named(loft, 0, 'stile-right')];
  const both = after(loft, [
    [left, 'mill', 'proved'],
    [right, 'mill', 'proved'],
  ]);
  const later = both.progress.parts[right];
  const mill = both.plan.doors[0]?.parts.find(({ part }) => part === 'stile-left')?.stages[0];
  const proof = later?.proved.mill;
  if (mill === undefined || later === undefined || proof === undefined) throw new Error('no proof');
  const setBack = { ...later, proved: { mill: { ...proof, at: '2026-11-25T07:00:00Z' } } };
  const progress = { ...both.progress, parts: { ...both.progress.parts, [right]: setBack } };
  expect(provedBy(proofKey('in', mill), [{ ...both, progress }])).toMatchObject({
    seq: proof.seq,
    at: '2026-11-25T07:00:00Z',
  });
});

test('a proof counts no more once its part is set otherwise than it was cut, until that cut is undone', () => {
  const left = named(loft, 0, 'stile-left');
  const cut = after(loft, [
    [left, 'mill', 'proved'],
    [left, 'mill', 'done'],
  ]);
  const [mill] = cut.plan.doors[0]?.parts.find(({ part }) => part === 'stile-left')?.stages ?? [];
  if (mill === undefined) throw new Error('no stile');
  const key = proofKey('in', mill);
  const seq = cut.progress.parts[left]?.done.mill?.seq ?? 0;
  const thinner = { code: left, stage: 'mill', seq, name: 'thickness', was: '13/16' };
  expect(provedBy(key, [cut])).not.toBeNull();
  expect(provedBy(key, [{ ...cut, asMarked: [thinner] }])).toBeNull();
  // Another length is no other set-up, and what was undone since says nothing.
  expect(provedBy(key, [{ ...cut, asMarked: [{ ...thinner, name: 'length', was: '20' }] }])).not.toBeNull();
  expect(provedBy(key, [{ ...cut, asMarked: [{ ...thinner, seq: seq + 100 }] }])).not.toBeNull();
});
