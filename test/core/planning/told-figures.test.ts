import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { PrintedPlan } from '#core/plan/printed-plan.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';

function planOf(file: unknown): PrintedPlan {
  const planned = planFile(file, { why: 'en' });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return speakPlan(planned.value, 'en');
}

/** Every sentence of a plan: its notes, and why each value is what it is. */
function sentencesOf(plan: PrintedPlan): string[] {
  return plan.doors.flatMap(({ notes, parts, stages }) => [
    ...notes.map(({ message }) => message),
    ...[...parts.flatMap((part) => part.stages), ...stages]
      .flatMap((stage) => [stage, ...(stage.places ?? [])])
      .flatMap(({ why }) => Object.values(why ?? {}))
      .map(({ reason }) => reason),
  ]);
}

test('a note says what a tape reads, and keeps the exact figures beside it', () => {
  const plan = planOf({
    format: 1,
    job: 'x',
    units: 'in',
    doors: [
      {
        mark: 'A',
        opening: { width: '16', height: '30' },
        panel: { species: 'beech' },
        survey: {
          widthBottom: '17',
          widthTop: '17',
          heightLeft: '30',
          heightRight: '30',
          diagonalUp: '34 31/64',
          diagonalDown: '34 31/64',
        },
      },
    ],
  });
  const note = (id: string) => plan.doors[0]?.notes.find((each) => each.id === id);
  const swells = note('panel-swells');
  const change = Number(swells?.figures.change);
  expect(String(swells?.figures.change)).toMatch(/^0\.\d{6}$/);
  const told = /swells ≈\u00a0(\d+)\/(\d+),/.exec(swells?.message ?? '');
  expect(Math.abs(Number(told?.[1]) / Number(told?.[2]) - change)).toBeLessThanOrEqual(1 / 128);
  // Built 16 wide in an opening of 17 with a reveal of 1/16 all round: 7/16 missing on each side.
  expect(note('does-not-cover')?.message).toContain('by 7/16: an oversize of 7/8 in width');
});

test('in millimetres sentences have decimals, no fractions', () => {
  const sentences = sentencesOf(
    planOf({
      format: 1,
      job: 'x',
      units: 'mm',
      doors: [
        {
          mark: 'A',
          opening: { width: '412.5', height: '733.3' },
          arch: { rise: 40, flat: 20 },
          midRails: [{ width: 70, centre: '300.25' }],
          panel: { species: 'beech' },
          mortise: { clearance: '0.5' },
          tenon: { outerSetback: '4.5' },
        },
      ],
    }),
  );
  expect(sentences).toContain('height as built 733.3 + two horns of 12 = 757.3');
  expect(sentences.filter((each) => /\d\/\d/.test(each))).toEqual([]);
});
