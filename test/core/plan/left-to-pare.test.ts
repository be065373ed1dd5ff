import type { LooseStage } from '../../loose-plan.ts';
import { expect, test } from 'vitest';
import { leftToPare } from '#core/plan/left-to-pare.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { Units } from '#core/length/units.ts';
import { hasWords } from '#core/words/say.ts';
import example from '../../fixtures/worked-example.json' with { type: 'json' };

test.each([
  ['mitre-bottom', 'sightEdge', '3 1/4', '3 15/64', '1/64', 'mitre'],
  ['mitre-top', 'sightEdge', '4 1/4', '4 15/64', '1/64', 'mitre'],
  ['mitre-mid-1-lower', 'sightEdge', '12', '11 63/64', '1/64', 'mitre'],
  ['mitre', 'sightEdge', '1 1/2', '1 31/64', '1/64', 'mitre'],
  ['strip', 'fence', '2', '2 1/64', '1/64', 'fence'],
  ['strip', 'run', '3', '2 63/64', '1/64', 'stop'],
  ['arch', 'radius', '6 11/32', '6 5/16', '1/32', 'arch'],
  ['cutout', 'radius', '6 21/32', '6 11/16', '1/32', 'cutout'],
] as const)('%s: %s %s is set to %s, %s is left', (stage, name, net, set, share, kind) => {
  expect(leftToPare(stage, name, net, 'in')).toEqual({ set, share, kind });
});

test.each([
  ['mitre-top', 'sightEdge', '82', '81 3/5', '2/5'],
  ['strip', 'fence', '52', '52 2/5', '2/5'],
  ['strip', 'run', '77', '76 3/5', '2/5'],
  ['arch', 'radius', '161 1/3', '160 8/15', '4/5'],
  ['cutout', 'radius', '170 1/2', '171 3/10', '4/5'],
] as const)('in a job in millimetres %s: %s %s is set to %s, %s is left', (stage, name, net, set, share) => {
  expect(leftToPare(stage, name, net, 'mm')).toMatchObject({ set, share });
});

test('a shoulder is cut to its line, a drum sands to it, and what is no length is left alone', () => {
  for (const [stage, name, value] of [
    ['shoulder', 'stop', '1 1/4'],
    ['tenon', 'innerStop', '1 1/4'],
    ['mitre-top', 'shoulderLine', '4'],
    ['mitre-top', 'height', '1/4'],
    ['mitre-top', 'tilt', 45],
    ['mitre-top', 'fromEnd', 'top'],
    ['strip', 'lag', '1.889123'],
    ['strip', 'faceUp', 'front'],
    ['smooth', 'radius', '6 11/32'],
    ['arch', 'pivot', '4 19/32'],
    ['mortise', 'stop', '2 3/4'],
  ] as const)
    expect(leftToPare(stage, name, value, 'in'), `${stage} ${name}`).toBeNull();
});

test('where less than the share is there nothing is set below zero', () => {
  expect(leftToPare('strip', 'run', '1/128', 'in')).toBeNull();
  expect(leftToPare('strip', 'run', '1/64', 'in')).toBeNull();
});

test('in the worked example each mitre, both runs, the fence and both radii are set off their lines, nothing else; each kind has words', () => {
  const planned = planFile(example);
  if (!planned.ok) throw new Error('the example has faults');
  const found = new Set<string>();
  const look = (units: Units, { stage, settings, places = [] }: LooseStage) => {
    for (const each of [settings, ...places.map((place) => place.settings)])
      for (const [name, value] of Object.entries(each)) {
        const left = leftToPare(stage, name, value, units);
        if (left === null) continue;
        found.add(`${stage} ${name}`);
        expect(hasWords(`pare.why.${left.kind}`)).toBe(true);
      }
  };
  for (const door of planned.value.doors)
    for (const stage of [...door.parts.flatMap(({ stages }) => stages), ...door.stages])
      look(planned.value.units, stage);
  expect([...found].sort()).toEqual([
    'arch radius',
    'cutout radius',
    'mitre sightEdge',
    'mitre-bottom sightEdge',
    'mitre-top sightEdge',
    'strip fence',
    'strip run',
  ]);
});
