import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { OpeningSurvey } from '#core/job/job.ts';
import { length, type Length, sum } from '#core/length/length.ts';
import { realOf } from '#core/length/real.ts';
import { misfits } from '#core/survey/misfits.ts';

interface Point {
  readonly x: number;
  readonly y: number;
}
const NAMES = ['widthBottom', 'widthTop', 'heightLeft', 'heightRight', 'diagonalUp', 'diagonalDown'] as const;

/** To a millionth: the tape of these tests is that good. */
const taped = (a: Point, b: Point): Length =>
  length(Math.round(Math.hypot(a.x - b.x, a.y - b.y) * 1e6), 1_000_000);

function surveyOf(a: Point, b: Point, c: Point, d: Point): OpeningSurvey {
  return {
    widthBottom: taped(a, b),
    widthTop: taped(d, c),
    heightLeft: taped(a, d),
    heightRight: taped(b, c),
    diagonalUp: taped(a, c),
    diagonalDown: taped(b, d),
  };
}

/** Openings from narrow to wide, each corner out of its place by up to an inch. */
const openings = fc
  .record({
    width: fc.integer({ min: 8, max: 60 }),
    height: fc.integer({ min: 8, max: 96 }),
    out: fc.array(fc.integer({ min: -64, max: 64 }), { minLength: 6, maxLength: 6 }),
  })
  .map(({ width, height, out }) => {
    const [bx = 0, by = 0, cx = 0, cy = 0, dx = 0, dy = 0] = out.map((each) => each / 64);
    return surveyOf(
      { x: 0, y: 0 },
      { x: width + bx, y: by },
      { x: width + cx, y: height + cy },
      { x: dx, y: height + dy },
    );
  });
/** A slip at writing: from 1/8 to three inches either way. */
const slips = fc
  .tuple(fc.integer({ min: 1, max: 24 }), fc.boolean())
  .map(([n, more]) => length(more ? n : -n, 8));

test('whichever measure is written wrong, it is among the six with its true value, to 1/128', () => {
  fc.assert(
    fc.property(openings, fc.constantFrom(...NAMES), slips, (survey, measure, slip) => {
      const told = misfits({ ...survey, [measure]: sum(survey[measure], slip) });
      const own = told.find((each) => each.measure === measure);
      expect(Math.abs(Number(own?.wouldBe) - realOf(survey[measure]))).toBeLessThan(1 / 128);
      expect(Math.abs(Number(own?.off) - realOf(slip))).toBeLessThan(1 / 128);
    }),
  );
});

test('each value that is told closes the opening: put in its place, no measure would be another', () => {
  fc.assert(
    fc.property(openings, fc.constantFrom(...NAMES), slips, (survey, measure, slip) => {
      const wrong = { ...survey, [measure]: sum(survey[measure], slip) };
      for (const { measure: own, wouldBe } of misfits(wrong)) {
        const mended = { ...wrong, [own]: length(Math.round(wouldBe * 1e9), 1e9) };
        for (const { off } of misfits(mended)) expect(Math.abs(off)).toBeLessThan(1 / 128);
      }
    }),
  );
});

test('an opening with a corner inward is none: it would close by one line and not by another', () => {
  const survey: OpeningSurvey = {
    widthBottom: length(18_007_838, 1_000_000),
    widthTop: length(18_007_384, 1_000_000),
    heightLeft: length(479, 64),
    heightRight: length(239, 32),
    // Written 2 7/8 short.
    diagonalUp: length(16_822_716, 1_000_000),
    diagonalDown: length(19_296_268, 1_000_000),
  };
  const told = misfits(survey);
  expect(told.find(({ measure }) => measure === 'diagonalUp')?.wouldBe).toBeCloseTo(19.697716, 4);
  for (const { measure, wouldBe } of told)
    for (const { off } of misfits({ ...survey, [measure]: length(Math.round(wouldBe * 1e9), 1e9) }))
      expect(Math.abs(off), measure).toBeLessThan(1 / 128);
});

test('the largest mistake stands first', () => {
  fc.assert(
    fc.property(openings, fc.constantFrom(...NAMES), slips, (survey, measure, slip) => {
      const sizes = misfits({ ...survey, [measure]: sum(survey[measure], slip) }).map(({ off }) =>
        Math.abs(off),
      );
      expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
    }),
  );
});

test('a diagonal written an inch short is told with what it would be, and no side is blamed alone', () => {
  // 30 by 40, so diagonals of 50; one written 49.
  const square = surveyOf({ x: 0, y: 0 }, { x: 30, y: 0 }, { x: 30, y: 40 }, { x: 0, y: 40 });
  const told = misfits({ ...square, diagonalUp: length(49) });
  expect(told.map(({ measure }) => measure).toSorted()).toEqual([...NAMES].toSorted());
  expect(told.find(({ measure }) => measure === 'diagonalUp')).toMatchObject({ wouldBe: 50, off: -1 });
});

test('a diagonal that no opening can have is the only one that can be wrong', () => {
  const square = surveyOf({ x: 0, y: 0 }, { x: 30, y: 0 }, { x: 30, y: 40 }, { x: 0, y: 40 });
  expect(misfits({ ...square, diagonalDown: length(90) })).toMatchObject([
    { measure: 'diagonalDown', wouldBe: 50 },
  ]);
  expect(misfits({ ...square, diagonalDown: length(90), diagonalUp: length(5) })).toEqual([]);
});
