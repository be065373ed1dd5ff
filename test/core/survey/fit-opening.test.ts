import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { PlanDoor } from '#core/plan/plan.ts';

/**
 * An opening 30 wide at the bottom and 30 1/8 at the top, both heights of 40 but the right side leaning outwards. With
 * A (0, 0), B (30, 0), C (30 1/8, 40), D (0, 40): AC = √(30.125² + 40²), BC = √(0.125² + 40²), BD = 50.
 */
const WIDER_ABOVE = {
  widthBottom: '30',
  widthTop: '30 1/8',
  heightLeft: '40',
  heightRight: '40.0001953120232',
  diagonalUp: '50.0750998500247',
  diagonalDown: '50',
};

function fitted(more: object): PlanDoor {
  const plan = planFile({
    format: 1,
    job: 'Rope walk',
    units: 'in',
    defaults: { reveal: '0', mortise: { endPlay: '0' }, tenon: { outerSetback: '3/8' } },
    doors: [{ mark: 'A', opening: { width: '30', height: '40' }, survey: WIDER_ABOVE, ...more }],
  });
  const door = plan.ok ? plan.value.doors[0] : undefined;
  if (door === undefined) throw new Error(JSON.stringify(plan));
  return door;
}

test('a door a quarter too large hung on the left: a sixteenth off the left edge, three and one off the right', () => {
  // Built 30 1/4 by 40 1/4. Across: the outline from 0 to 30 1/8 under 30 1/4, so it begins 1/16 left of it; its right edge
  // at 30 3/16 is 3/16 from B and 1/16 from C. Along: 40 under 40 1/4, so 1/8 all along both ends.
  expect(fitted({ oversize: { width: '1/4', height: '1/4' } }).values.survey?.takeOff).toEqual({
    left: { bottom: '0.062500', top: '0.062500' },
    right: { bottom: '0.187500', top: '0.062500' },
    bottom: { left: '0.125000', right: '0.125000' },
    top: { left: '0.125000', right: '0.125000' },
  });
});

test('hung on the right the same opening leans the left edge, and its amounts are the other way round', () => {
  // The right side upright: the whole turns anticlockwise by atan(0.125 / 40), so D stands about 1/8 left of A, and A lies
  // 30 · 0.125 / 40 = 0.09375 lower than B: less comes off the bottom at its left.
  const off = fitted({ oversize: { width: '1/2', height: '1/2' }, hinge: 'right' }).values.survey?.takeOff;
  if (off === undefined) throw new Error('no survey');
  expect(Number(off.right.bottom)).toBeCloseTo(Number(off.right.top), 5);
  expect(Number(off.left.bottom) - Number(off.left.top)).toBeCloseTo(0.125, 3);
  expect(Number(off.bottom.right) - Number(off.bottom.left)).toBeCloseTo(0.09375, 3);
});

test('a door that does not cover its opening is told by amounts below zero and by the oversize that would do', () => {
  // Built 30 by 40: across, the outline sticks out 1/16 on the left; on the right by 1/16 above and is covered by 1/16 below.
  const door = fitted({});
  expect(door.values.survey?.takeOff).toMatchObject({
    left: { bottom: '-0.062500', top: '-0.062500' },
    right: { bottom: '0.062500', top: '-0.062500' },
  });
  const told = door.notes.find(({ id }) => id === 'does-not-cover');
  expect(told?.figures).toMatchObject({ missing: '0.062500', width: '1/8' });
});

test('over reveals that differ the door is laid so that each side has as much more than its trim as the other', () => {
  // The same opening with 1/16 left, 1/8 right, 3/32 at the bottom and nothing at the top; built 30 1/4 by 40 1/4. Planned
  // to come off: left 3/16, right 1/4, bottom 7/32, top 1/8. The outline is 1/16 to 30 (below) across: 29 15/16 and three
  // reveals under 30 1/4 leave 3/16 + 1/4 at the narrowest, less the 1/8 by which the opening is wider above: so the right
  // edge has 1/8 more at the bottom. At the narrowest the surplus over the trims is −1/16 on both sides.
  const reveal = { left: '1/16', right: '1/8', bottom: '3/32', top: '0' };
  const off = fitted({ oversize: { width: '1/4', height: '1/4' }, reveal }).values.survey?.takeOff;
  if (off === undefined) throw new Error('no survey');
  const [left, right] = [
    Math.min(+off.left.bottom, +off.left.top),
    Math.min(+off.right.bottom, +off.right.top),
  ];
  expect(left).toBeCloseTo(1 / 8, 4);
  expect(right).toBeCloseTo(3 / 16, 4);
  expect(+off.right.bottom - +off.right.top).toBeCloseTo(1 / 8, 3);
  expect([+off.bottom.left, +off.bottom.right]).toEqual([0.21875, 0.21875]);
  expect([+off.top.left, +off.top.right]).toEqual([0.125, 0.125]);
});

/** Six measures of a square opening of 3 by 4 feet: its diagonals are 5 feet, exactly. */
const SQUARE = {
  widthBottom: '36',
  widthTop: '36',
  heightLeft: '48',
  heightRight: '48',
  diagonalUp: '60',
  diagonalDown: '60',
};

test.each(['left', 'right'])(
  'in a square opening, hung on the %s, what comes off is what was planned for each side',
  (hinge) => {
    const door = fitted({
      opening: { width: '36', height: '48' },
      survey: SQUARE,
      hinge,
      oversize: { width: '1/4', height: '1/8' },
      reveal: { left: '1/16', right: '1/8', bottom: '3/8', top: '3/32' },
      tenon: { outerSetback: '3/4' },
    });
    // Half of 1/4 and half of 1/8, and each side's reveal.
    expect(door.values.trim).toEqual({ left: '3/16', right: '1/4', bottom: '7/16', top: '5/32' });
    const off = door.values.survey?.takeOff;
    const all = (ends: object | undefined) => Object.values(ends ?? {}).map(Number);
    expect(all(off?.left)).toEqual([0.1875, 0.1875]);
    expect(all(off?.right)).toEqual([0.25, 0.25]);
    expect(all(off?.bottom)).toEqual([0.4375, 0.4375]);
    expect(all(off?.top)).toEqual([0.15625, 0.15625]);
  },
);
