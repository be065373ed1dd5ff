// @vitest-environment node

import { stageOf } from '#core/plan/stage-of.ts';
import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { reasonIn } from '#ui/station/reasons.ts';

const file = {
  format: 1,
  job: 'Millbrook boot room',
  units: 'in',
  doors: [{ mark: 'A', quantity: 2, opening: { width: '14 3/4', height: '22 1/2' } }],
};
const planned = planFile(file, { why: 'en' });
const door = planned.ok ? (planned.value.doors[0] ?? null) : null;

test('a number of a place is explained by where it is measured from and how it was reckoned', () => {
  const stile = door?.parts.find(({ part }) => part === 'stile-left');
  const mortise = stile === undefined ? undefined : stageOf(stile, 'mortise');
  const stop = mortise?.places.find(({ at }) => at === 'top')?.settings.stop;
  const asked = {
    mark: 'A',
    part: 'stile-left',
    stage: 'mortise',
    name: 'stop',
    value: stop ?? '',
    at: 'top',
  };
  const why = reasonIn(door, asked);
  expect(why?.from).toContain('top');
  expect(why?.reason).toContain('end play');
  expect(reasonIn(door, { ...asked, at: undefined })).toBeNull();
});

test('a number that is not this plan’s, as after stock was cut otherwise, is not explained by it', () => {
  const asked = { mark: 'A', part: 'stile-left', stage: 'mill', name: 'width', value: '2 1/4' };
  expect(reasonIn(door, asked)).not.toBeNull();
  expect(reasonIn(door, { ...asked, value: '2 3/16' })).toBeNull();
  expect(reasonIn(null, asked)).toBeNull();
});

test('a door’s own stage is explained too', () => {
  const dryfit = door?.stages.find(({ stage }) => stage === 'dryfit');
  for (const [name, value] of Object.entries<string>(dryfit?.settings ?? {}))
    expect(reasonIn(door, { mark: 'A', part: 'panel', stage: 'dryfit', name, value })?.reason, name).toMatch(
      /\w/,
    );
});
