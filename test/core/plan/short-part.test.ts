import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';
import { isShortPart, shortLimit } from '#core/plan/short-part.ts';

test('under a foot, or 300 mm, a part is short; just that long it is not', () => {
  expect(isShortPart({ length: '11 63/64' }, 'in')).toBe(true);
  expect(isShortPart({ length: '12' }, 'in')).toBe(false);
  expect(isShortPart({ length: '299 9/10' }, 'mm')).toBe(true);
  expect(isShortPart({ length: '300' }, 'mm')).toBe(false);
  expect([shortLimit('in'), shortLimit('mm')]).toEqual(['12', '300']);
});

test('just the parts that the plan warns of are short', () => {
  for (const [width, height] of [
    ['9', '10'],
    ['9', '30'],
    ['20', '13'],
    ['20', '30'],
  ] as const) {
    const planned = planFile({
      format: 1,
      job: 'Sink cupboard',
      units: 'in',
      doors: [{ mark: 'SINK', opening: { width, height } }],
    });
    if (!planned.ok) throw new Error('the job has faults');
    const [door] = speakPlan(planned.value, 'en').doors;
    const kinds = new Set(
      door?.parts.filter((part) => isShortPart(part, 'in')).map(({ part }) => part.split('-')[0]),
    );
    const warned = new Set(
      door?.notes.filter(({ id }) => id === 'short-piece').map(({ figures }) => String(figures.part)),
    );
    expect([...kinds].sort(), `${width} × ${height}`).toEqual([...warned].sort());
  }
});
