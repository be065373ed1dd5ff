import { expect, test } from 'vitest';
import { hasProof } from '#core/queue/proved.ts';
import { flatSettings, settingsToSet } from '#core/queue/setting-key.ts';
import { namedSettings, toSet } from '#core/queue/to-set.ts';
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
  const stage = (station: PlanStage['station'], settings: Readonly<Record<string, string>>): PlanStage =>
    ({ stage: 'one', station, settings, after: [] }) as unknown as PlanStage;
  expect(hasProof(stage('table-saw', { fence: '5/16' }))).toBe(true);
  expect(hasProof(stage('table-saw', {}))).toBe(false);
  expect(hasProof(stage('bench', { width: '1/4' }))).toBe(false);
  expect(hasProof(stage('assembly', { diagonal: '33.733333' }))).toBe(false);
});

const mill = (length: string): PlanStage => ({
  stage: 'mill',
  station: 'milling',
  settings: { length, width: '2 1/4', thickness: '7/8' },
  after: [],
});

test('after a set-up of the same kind only what differs is to be set; with nothing before it the whole', () => {
  const next = mill('13 3/4');
  const before = flatSettings('in', mill('18 5/8'));
  expect(toSet(before, flatSettings('in', next), next)).toEqual({
    whole: false,
    settings: [{ key: 'length', name: 'length', value: '13 3/4' }],
  });
  expect(toSet(null, flatSettings('in', next), next)).toMatchObject({
    whole: true,
    settings: [{ name: 'length' }, { name: 'width' }, { name: 'thickness' }],
  });
});

test('after a set-up of another kind the whole is to be set, though a figure happens to be alike', () => {
  const shoulder: PlanStage = {
    stage: 'shoulder',
    station: 'table-saw',
    settings: { stop: '1 1/4', height: '5/16' },
    after: [],
  };
  const cheek: PlanStage = { ...shoulder, stage: 'cheek', settings: { height: '5/16', thickness: '1/4' } };
  expect(toSet(flatSettings('in', shoulder), flatSettings('in', cheek), cheek)).toMatchObject({
    whole: true,
    settings: [{ name: 'height' }, { name: 'thickness' }],
  });
});

test('no two settings of a set-up go by the same key, those of different places included', () => {
  const mortise: PlanStage = {
    stage: 'mortise',
    station: 'mortiser',
    settings: { depthFromEdge: '1 9/16', depthFromGroove: '1 3/16' },
    places: [
      { at: 'bottom', settings: { start: '7/8', stop: '2 3/4', length: '1 7/8' } },
      { at: 'top', settings: { start: '7/8', stop: '3 3/4', length: '2 7/8' } },
    ],
    after: [],
  };
  const keys = namedSettings(mortise).map(({ key }) => key);
  expect(keys).toEqual([
    'depthFromEdge',
    'depthFromGroove',
    'start at bottom',
    'stop at bottom',
    'length at bottom',
    'start at top',
    'stop at top',
    'length at top',
  ]);
  expect(keys).toEqual([...flatSettings('in', mortise).keys()].filter((name) => name !== 'stage'));
});
