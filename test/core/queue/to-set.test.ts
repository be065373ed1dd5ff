import { expect, test } from 'vitest';
import { hasProof } from '#core/queue/proved.ts';
import { settingsToSet } from '#core/queue/setting-key.ts';
import type { PlanStage } from '#core/plan/plan.ts';

const flat = (entries: Readonly<Record<string, string>>) => new Map(Object.entries(entries));

test('what is to be set is what differs or comes new, never the stage’s own name', () => {
  const from = flat({ stage: 'mill', length: '18 5/8 in', width: '2 1/4 in', thickness: '7/8 in' });
  const to = flat({ stage: 'mill', length: '13 3/4 in', width: '2 1/4 in', thickness: '7/8 in' });
  expect([...settingsToSet(from, to)]).toEqual(['length']);
  expect([...settingsToSet(from, from)]).toEqual([]);
  expect([...settingsToSet(from, flat({ stage: 'groove', width: '1/4 in', fence: '5/16 in' }))]).toEqual([
    'width',
    'fence',
  ]);
});

test('with nothing known to stand on the machine everything is to be set', () => {
  expect([...settingsToSet(null, flat({ stage: 'mill', length: '18 5/8 in', width: '2 1/4 in' }))]).toEqual([
    'length',
    'width',
  ]);
});

test('a proof is asked for where a machine is set, not for work by hand and not where there is nothing to set', () => {
  const stage = (station: PlanStage['station'], settings: PlanStage['settings']): PlanStage => ({
    stage: 'one',
    station,
    settings,
    after: [],
  });
  expect(hasProof(stage('table-saw', { fence: '5/16' }))).toBe(true);
  expect(hasProof(stage('table-saw', {}))).toBe(false);
  expect(hasProof(stage('bench', { width: '1/4' }))).toBe(false);
  expect(hasProof(stage('assembly', { diagonal: '33.733333' }))).toBe(false);
});
