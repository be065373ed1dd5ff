// @vitest-environment node

import { expect, test } from 'vitest';
import type { PlanStage } from '#core/plan/plan.ts';
import { placeEnd } from '#core/plan/place-name.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { say } from '#core/words/say.ts';
import { firstPlace, nextPlace, toPlace } from '#ui/station/places.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };

const mortise: PlanStage = {
  stage: 'mortise',
  station: 'mortiser',
  settings: { depthFromEdge: '1 9/16', depthFromGroove: '1 3/16' },
  places: (['bottom', 'mid-1', 'top'] as const).map((at) => ({
    at,
    settings: { start: '1', stop: '2', length: '1' },
  })),
  after: [],
};

test('each place comes up once, round from the one that was tapped, and after the last there is none', () => {
  const first = firstPlace(mortise);
  expect(first).toEqual({ place: 'bottom', seen: ['bottom'] });
  expect(nextPlace(mortise, first)).toBe('mid-1');
  const tapped = toPlace(first, 'top');
  expect(nextPlace(mortise, tapped)).toBe('mid-1');
  expect(nextPlace(mortise, toPlace(tapped, 'mid-1'))).toBeNull();
});

test('a stage that is set once has no place to step to', () => {
  const clean: PlanStage = { stage: 'clean', station: 'bench', settings: {}, after: [] };
  expect(nextPlace(clean, firstPlace(clean))).toBeNull();
});

test('the end that is said of a place is the one that the plan measures it from', () => {
  const planned = planFile({ ...demo, ways: { strip: 'rip' } }, { why: 'en' });
  if (!planned.ok) throw new Error('the demo job has faults');
  let places = 0;
  for (const { parts } of planned.value.doors)
    for (const { stages } of parts)
      for (const { places: own = [] } of stages)
        for (const { at, why = {} } of own) {
          places += 1;
          const from = why.start?.from ?? why.run?.from;
          expect(from).toBe(say(`from.${placeEnd(at)}-end`));
        }
  expect(places).toBeGreaterThan(50);
});
