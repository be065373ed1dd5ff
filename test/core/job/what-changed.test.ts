import { expect, test } from 'vitest';
import { MOST_CHANGES, type SavedAs, whatChanged } from '#core/job/what-changed.ts';

const door = { mark: 'BENCH', quantity: 2, opening: { width: '16', height: '30' } };
const saved = (file: object = {}, more: Partial<SavedAs> = {}): SavedAs => ({
  file: { format: 1, job: 'Boot room', units: 'in', doors: [door], ...file },
  measured: {},
  profile: { chisels: ['1/4', '3/8'] },
  ...more,
});
const told = (after: SavedAs, before = saved()) =>
  whatChanged(before, after).changes.map(
    ({ mark, field, was = '–', now = '–' }) =>
      `${mark === undefined ? '' : `${mark} `}${field}: ${was} → ${now}`,
  );

test('of a save that changes nothing nothing is told, in whatever order its doors and fields stand', () => {
  const two = { ...door, mark: 'PANTRY' };
  const turned = { opening: { height: '30', width: '16' }, mark: 'BENCH', quantity: 2 };
  expect(told(saved({ doors: [two, turned] }), saved({ doors: [door, two] }))).toEqual([]);
});

test('fields are told by where they stand, from and to, what is left out or null as not there', () => {
  const after = saved({
    due: '2026-12-24',
    defaults: { stile: { width: '2 1/2' }, arch: null, horn: 1 },
    doors: [{ ...door, opening: { width: '17', height: '30' }, arch: { rise: '1 3/4', flat: '3/4' } }],
  });
  expect(told(after)).toEqual([
    'due: – → 2026-12-24',
    'defaults.stile.width: – → 2 1/2',
    'defaults.horn: – → 1',
    'BENCH opening.width: 16 → 17',
    'BENCH arch.rise: – → 1 3/4',
    'BENCH arch.flat: – → 3/4',
  ]);
  expect(told(saved(), after)).toContain('BENCH arch.rise: 1 3/4 → –');
});

test('doors that came, went, or became more are told with how many they are', () => {
  const { quantity: _two, ...one } = door;
  expect(told(saved({ doors: [one, { ...door, mark: 'PANTRY' }] }))).toEqual([
    'PANTRY door: – → 2',
    'BENCH quantity: 2 → 1',
  ]);
  expect(told(saved({ doors: [{ ...one, mark: 'NEW' }] }))).toEqual(['BENCH door: 2 → –', 'NEW door: – → 1']);
  expect(told(saved({ doors: [{ ...one, quantity: 1 }] }), saved({ doors: [one] }))).toEqual([]);
});

test('sizes as they came out are told one by one, other tools in one', () => {
  const measured = { doors: { 'BENCH-1': { parts: { panel: { width: '11' } } } } };
  expect(told(saved({}, { measured, profile: { chisels: ['1/4'] } }))).toEqual([
    'measured.doors.BENCH-1.parts.panel.width: – → 11',
    'profile: – → –',
  ]);
});

test('of many changes the first are told, and how many more there are', () => {
  const doors = Array.from({ length: 20 }, (_, k) => ({ ...door, mark: `D${k}` }));
  const { changes, more } = whatChanged(saved({ doors: [] }), saved({ job: 'Other', doors }));
  expect(changes[0]).toEqual({ field: 'job', was: 'Boot room', now: 'Other' });
  expect([changes.length, more]).toEqual([MOST_CHANGES, 21 - MOST_CHANGES]);
});
