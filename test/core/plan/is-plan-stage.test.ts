import { expect, test } from 'vitest';
import { isPlanStage } from '#core/plan/is-plan-stage.ts';

const strip = {
  stage: 'strip',
  station: 'table-saw',
  settings: { fence: '2' },
  places: [{ at: 'bottom', settings: { run: '3', faceUp: 'front' } }],
  after: ['mortise', 'mitre-mid-2-lower'],
} as const;

test('a stage is one of a plan when its kind, its settings, its places and what it comes after are', () => {
  expect(isPlanStage(strip)).toBe(true);
  // A later version may set more.
  expect(isPlanStage({ ...strip, settings: { fence: '2', guard: 'on' } })).toBe(true);
});

test('what is unknown, missing or of another sort makes it none', () => {
  const refused = [
    { ...strip, stage: 'stripp' },
    { ...strip, settings: {} },
    { ...strip, settings: { fence: 2 } },
    { ...strip, after: ['mortice'] },
    { ...strip, places: undefined },
    { ...strip, places: [{ at: 'middle', settings: { run: '3', faceUp: 'front' } }] },
    { ...strip, places: [{ at: 'bottom', settings: { run: '3', faceUp: 'left' } }] },
    { ...strip, stage: 'groove', settings: { width: '1/4', depth: '3/8', fence: '1/4' } },
  ];
  for (const each of refused) expect(isPlanStage(each), JSON.stringify(each)).toBe(false);
});
