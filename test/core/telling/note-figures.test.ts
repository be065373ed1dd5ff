import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';

function notesOf(units: 'in' | 'mm', fields: object) {
  const planned = planFile({ format: 1, job: 'x', units, doors: [{ mark: 'A', ...fields }] });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return speakPlan(planned.value, 'en').doors[0]?.notes ?? [];
}

test('a note tells a length of odd sixty-fourths as near as it is read, its figure stays exact', () => {
  // Between rails of 2 51/64 and 2 33/64 at 12: 12 − 1 33/128 − 2 51/64 + 5/8 = 8 73/128.
  const notes = notesOf('in', {
    opening: { width: '14', height: '42' },
    bottomRail: { width: '2 51/64' },
    midRails: [{ width: '2 33/64', centre: '12' }],
  });
  const short = notes.find(({ id }) => id === 'short-piece');
  expect(short?.message).toMatch(/^panel 1 is ≈\u00a08\u00a037\/64 long, under 12:/);
  expect(Object.values(short?.figures ?? {})).toContain('8 73/128');
  // 300 − 57.255/2 − 70 + 17 = 218.3725.
  const metric = notesOf('mm', {
    opening: { width: '400', height: '700' },
    midRails: [{ width: '57.255', centre: '300' }],
  });
  const told = metric.find(({ id }) => id === 'short-piece');
  expect(told?.message).toMatch(/^panel 1 is ≈\u00a0218\.37 long, under 300:/);
});

test('a length under an inch is told exactly: it may be all that the note is about', () => {
  // The bead itself is under 1/16, its fillet 1/4 − 7/128 = 25/128 over it.
  const notes = notesOf('in', { opening: { width: '14', height: '42' }, bead: '7/128' });
  const told = notes.map(({ message }) => message).join('\n');
  expect(told).toMatch(/\b7\/128\b/);
  expect(told).toMatch(/\b25\/128\b/);
});
