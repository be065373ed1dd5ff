import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';

// 30 × 16 with diagonals of 34 is a rectangle; a top width written 1/4 too long, or too short, misses by 1/4 either way.
test.each(['30 1/4', '29 3/4'])(
  'six measures that miss say by how much, never less than nothing: top %s',
  (widthTop) => {
    const survey = {
      widthBottom: '30',
      widthTop,
      heightLeft: '16',
      heightRight: '16',
      diagonalUp: '34',
      diagonalDown: '34',
    };
    const planned = planFile({
      format: 1,
      job: 'Larder',
      units: 'in',
      doors: [{ mark: 'A', opening: { width: '30', height: '16' }, survey }],
    });
    if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
    const note = speakPlan(planned.value, 'en').doors[0]?.notes.find(({ id }) => id === 'closure');
    expect(Number(note?.figures.closure)).toBeCloseTo(0.25, 6);
    expect(note?.message.replaceAll('\u00a0', ' ')).toContain('by 1/4: measure again');
  },
);
