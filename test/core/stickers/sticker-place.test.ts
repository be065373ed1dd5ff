import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { parseLength } from '#core/length/parse-length.ts';
import { printLength } from '#core/length/print-length.ts';
import type { Plan } from '#core/plan/plan.ts';
import { backFace } from '#core/stickers/back-face.ts';
import { labelIn, placeWords, stickerPlace } from '#core/stickers/sticker-place.ts';
import { BUILT_IN_STOCKS } from '#core/stickers/stock.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };
import worked from '../../fixtures/worked-example.json' with { type: 'json' };

function planOf(job: unknown): Plan {
  const planned = planFile(job);
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return planned.value;
}

function place(plan: Plan, mark: string, name: string, stock: keyof typeof BUILT_IN_STOCKS) {
  const door = plan.doors.find((each) => each.mark === mark);
  const part = door?.parts.find((each) => each.part === name);
  if (door === undefined || part === undefined) throw new Error(`${mark} ${name} is not in the plan`);
  const found = stickerPlace(door, part, plan.units, labelIn(BUILT_IN_STOCKS[stock], plan.units));
  return { state: found.state, words: placeWords(part, found, plan.units) };
}

const shown = ({ from, to }: { from: Parameters<typeof printLength>[0]; to: typeof from }) =>
  `${printLength(from)} to ${printLength(to)}`;

function faceOf(plan: Plan, name: string, mark?: string) {
  const door = plan.doors.find((each) => mark === undefined || each.mark === mark);
  const part = door?.parts.find((each) => each.part === name);
  if (door === undefined || part === undefined) throw new Error(`${name} is not in the plan`);
  const { lasting, clear } = backFace(door, part, plan.units);
  return {
    lasting: [shown(lasting.along), shown(lasting.across)],
    clear: [clear.along.map(shown), shown(clear.across)],
  };
}

// The worked example: stile 23 1/2 x 2 1/4, horn 1/2, trim 1/16 all round (opening as built, reveal 1/16), bead 1/4,
// groove 3/8 deep, tenon 1 1/4; mitres of the stile at 3 1/4 and 4 1/4, mortises to 2 3/4 and 3 3/4.
test('a left stile’s back is free from the horn’s trim to where its top bears, and clear of twice the groove', () => {
  // Ends: 1/2 + 1/16 = 9/16 from each. Across: 1/16 to 2 1/4 - 1/4 = 2; the fence takes 2 x 3/8: to 1 1/2.
  // The back meets the gauge at the top mitre: twice 4 1/4 = 8 1/2 (under 4 1/4 + 4) but no more than 8 1/4:
  // 23 1/2 - 8 1/4 = 15 1/4.
  expect(faceOf(planOf(worked), 'stile-left')).toEqual({
    lasting: ['9/16 to 22 15/16', '1/16 to 2'],
    clear: [['9/16 to 15 1/4'], '1/16 to 1 1/2'],
  });
});

test('a right stile’s back bears at the bottom instead', () => {
  // Bottom mitre at 3 1/4: twice that is 6 1/2, under 3 1/4 + 4.
  expect(faceOf(planOf(worked), 'stile-right').clear).toEqual([['6 1/2 to 22 15/16'], '1/16 to 1 1/2']);
});

test('a bottom rail is free between twice its mitres, an arched rail above its crown over the full depth', () => {
  // Rails 13 1/4 long, mitre at 1 1/2: 3 to 10 1/4. Bottom rail 2 3/4: 1/16 to 2 3/4 - 3/4 = 2.
  expect(faceOf(planOf(worked), 'rail-bottom').clear).toEqual([['3 to 10 1/4'], '1/16 to 2']);
  // Top rail 3 3/4 at its ends, rise 1 3/4: the crown is 2 wide; its slot is run front down.
  expect(faceOf(planOf(worked), 'rail-top').clear).toEqual([['3 to 10 1/4'], '1/16 to 2']);
});

test('a panel is free inside twice its band, below its springing', () => {
  // Panel 10 7/8 wide, sides 16 5/8, band 1 where it is raised.
  const face = faceOf(planOf(worked), 'panel');
  const raised = planOf(worked)
    .doors[0]?.parts.at(-1)
    ?.stages.some(({ stage }) => stage === 'raise');
  expect(raised).toBe(true);
  expect(face).toEqual({
    lasting: ['1 to 15 5/8', '1 to 9 7/8'],
    clear: [['2 to 14 5/8'], '2 to 8 7/8'],
  });
});

test('a mid rail keeps clear on both edges, and the stile behind it where the back meets a fence', () => {
  const plan = planOf(demo);
  // LOCKER: mid rail 3 wide, groove 3/8 deep: 3/4 to 2 1/4. Rails 13 3/4, mitre at 1 1/2.
  expect(faceOf(plan, 'rail-mid-1', 'LOCKER').clear).toEqual([['3 to 10 3/4'], '3/4 to 2 1/4']);
  // Left stile 48 7/8 long; top rail 2 1/4 + horn 1/2: mitre at 2 3/4, so 5 1/2 from the top: 43 3/8.
  // Mid rail centred 25 1/2: sight edge from the top 1/2 + 47 7/8 - 25 1/2 + 1 1/2 = 24 3/8, its shoulder 24 1/8;
  // from the bottom 24 1/2 and 24 3/4, and 4 to each side: 20 1/2 to 28 3/4.
  expect(faceOf(plan, 'stile-left', 'LOCKER').clear[0]).toEqual(['9/16 to 20 1/2', '28 3/4 to 43 3/8']);
});

test('a sticker 1 high goes on a stile, one of 36 mm or 2 in is too high for it', () => {
  const plan = planOf(demo);
  // Across 1/16 to 1 1/2 leaves 1 7/16: in the middle 1/16 + (1 7/16 - 1)/2 = 9/32, down to 1/4.
  // Along 9/16 to 18 5/8 - 5 1/2 = 13 1/8: the middle of 12 9/16 less 2 5/8 = 5 17/32, down to 5 1/2.
  expect(place(plan, 'BENCH', 'stile-left', 'letter-3x10')).toEqual({
    state: 'clear',
    words: 'place on back: 5\u00a01/2 from bottom end, 1/4 from outer edge',
  });
  // 36 mm is 1 53/127 in, and a hand's 1/16 each side: 1.54 is more than 1 7/16, but less than 2 - 1/16.
  expect(place(plan, 'BENCH', 'stile-left', 'a4-3x8').state).toBe('bears');
  expect(place(plan, 'BENCH', 'stile-left', 'roll-4x2')).toEqual({
    state: 'none',
    words: 'larger than its place on the back: keep it with the part',
  });
});

test('a sticker on a rail or panel stands in its middle', () => {
  const plan = planOf(demo);
  // Bottom rail 2 3/4: 1/16 to 2, sticker 1: in the middle at 17/32, down to 1/2.
  expect(place(plan, 'BENCH', 'rail-bottom', 'roll-3x1').words).toBe(
    'place on back: in the middle, 1/2 from outer edge',
  );
  // Panel 13 3/16 high: (13 3/16 - 1)/2 = 6 3/32, down to the 1/16.
  expect(place(plan, 'BENCH', 'panel', 'roll-3x1')).toEqual({
    state: 'clear',
    words: 'place on back: in the middle, 6\u00a01/16 from bottom',
  });
  // A sticker of 36 mm on a job in inches: (13 3/16 - 36/25.4)/2 = 5 3597/4064.
  expect(place(plan, 'BENCH', 'panel', 'a4-3x8').words).toBe(
    'place on back: in the middle, 5\u00a07/8 from bottom',
  );
});

test('a door built larger, and a survey that takes more off an edge, move the place away from it', () => {
  const door = {
    mark: 'A',
    opening: { width: '20', height: '30' },
    oversize: { width: '1/4', height: '1/4' },
    reveal: '1/16',
  };
  const square = planOf({ format: 1, job: 'square', units: 'in', doors: [door] });
  // 20 1/4 wide for 19 7/8: 3/16 off each side; stile 2 1/4 with a bead of 3/16.
  expect(faceOf(square, 'stile-left').lasting[1]).toBe('3/16 to 2 1/16');
  // An opening that leans to the right: one diagonal 36 3/16, the other 35 15/16.
  const survey = {
    widthBottom: '20',
    widthTop: '20',
    heightLeft: '30',
    heightRight: '30',
    diagonalUp: '36 3/16',
    diagonalDown: '35 15/16',
  };
  const leaning = planOf({ format: 1, job: 'leaning', units: 'in', doors: [{ ...door, survey }] });
  const taken = leaning.doors[0]?.values.survey?.takeOff.right;
  const most = Math.max(Number(taken?.bottom), Number(taken?.top));
  expect(most).toBeGreaterThan(3 / 16);
  const read = parseLength(most.toFixed(6), 'in');
  if (!read.ok) throw new Error('six decimals are a length');
  expect(faceOf(leaning, 'stile-right').lasting[1]).toBe(`${printLength(read.value)} to 2 1/16`);
});

test('each edge of a back lasts from its own side’s trim on', () => {
  const uneven = planOf({
    format: 1,
    job: 'uneven',
    units: 'in',
    doors: [
      {
        mark: 'A',
        opening: { width: '20', height: '30' },
        reveal: { left: '1/16', right: '1/8', bottom: '3/16', top: '1/32' },
      },
    ],
  });
  // Stile 2 1/4 with a bead of 3/16; horns of 1/2 on stiles of 31.
  expect(faceOf(uneven, 'stile-left').lasting).toEqual(['11/16 to 30 15/32', '1/16 to 2 1/16']);
  expect(faceOf(uneven, 'stile-right').lasting).toEqual(['11/16 to 30 15/32', '1/8 to 2 1/16']);
  expect(faceOf(uneven, 'rail-bottom').lasting[1]).toBe('3/16 to 2 9/16');
  expect(faceOf(uneven, 'rail-top').lasting[1]).toBe('1/32 to 2 1/16');
});
