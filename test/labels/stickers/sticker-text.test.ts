import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { labelIn, stickerPlace } from '#core/stickers/sticker-place.ts';
import { BUILT_IN_STOCKS } from '#core/stickers/stock.ts';
import { stickerText } from '#labels/stickers/sticker-text.ts';

function notesOf(file: unknown, name: string): string[] {
  const planned = planFile(file);
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const plan = planned.value;
  const [door] = plan.doors;
  const part = door?.parts.find((each) => each.part === name);
  if (door === undefined || part === undefined) throw new Error(`no ${name}`);
  const stock = labelIn(BUILT_IN_STOCKS['letter-3x10'], plan.units);
  const { size, notes } = stickerText(plan, door, part, stickerPlace(door, part, plan.units, stock));
  return [size, ...notes.slice(0, -1)];
}

test('in millimetres a sticker has decimals, to a tenth', () => {
  const job = {
    format: 1,
    job: 'x',
    units: 'mm',
    doors: [
      {
        mark: 'A',
        opening: { width: '412.5', height: '733.3' },
        arch: { rise: 40, flat: 20 },
        midRails: [{ width: 70, centre: '300.25' }],
      },
    ],
  };
  expect(notesOf(job, 'stile-left')).toEqual([
    '757.3 × 57 × 19',
    'bead 5',
    'groove 6 × 10',
    // Deep 5 + 32 + 1.5; bottom 12 + 10 − 0.8; the mid rail’s 12 + 300.25 ∓ 35 ± (5 + 6 − 0.8), to a tenth.
    'mortises 38.5 deep: bottom 21.2 to 71.8, mid 1 from bottom ≈\u00a0287.5 to ≈\u00a0337.1, top 21.2 to 98.8',
  ]);
  // A chord of 258.5 and a rise of 40: 258.5² / 320 + 20 = 228.8195.
  expect(notesOf(job, 'rail-top')).toContain('arch radius ≈\u00a0228.8, rise 40');
});

test('in inches a sticker has what a tape has, to 1/64', () => {
  const job = {
    format: 1,
    job: 'x',
    units: 'in',
    doors: [{ mark: 'A', opening: { width: '15', height: '30' }, arch: { rise: '1 3/4', flat: '3/4' } }],
  };
  // A chord of 15 − 4 1/2 − 1 1/2 = 9 and a rise of 1 3/4: 81 / 14 + 7/8 = 6 37/56, which is 6.6607.
  expect(notesOf(job, 'rail-top')).toContain('arch radius ≈\u00a06\u00a021/32, rise 1\u00a03/4');
});
