import fc from 'fast-check';
import { expect, test } from 'vitest';
import { offset } from '#core/outline/offset.ts';
import { openingOutline } from '#core/outline/opening-outline.ts';
import { distance, edgesOf, type Outline } from '#core/outline/outline.ts';
import { perimeter, signedArea } from '#core/outline/outline-area.ts';

/** An opening of chord and rise with flats, its pivot by R = C²/(8h) + h/2. */
function arched(width: number, height: number, rise: number, flat: number): Outline {
  const chord = width - 2 * flat;
  return openingOutline(width, height, { chord, rise, pivot: chord ** 2 / (8 * rise) - rise / 2 });
}

const moved = (outline: Outline, amount: number): Outline => {
  const made = offset(outline, amount);
  if (made === null) throw new Error(`nothing is left at ${amount}`);
  return made;
};
const cornersOf = (outline: Outline) => edgesOf(outline).map(({ from }) => from);

const opening = fc
  .record({
    width: fc.integer({ min: 5 * 16, max: 30 * 16 }),
    height: fc.integer({ min: 6 * 16, max: 60 * 16 }),
    rise: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
    flat: fc.double({ min: 0.02, max: 0.3, noNaN: true }),
  })
  .map(({ width, height, rise, flat }) => {
    const [wide, high] = [width / 16, height / 16];
    return arched(wide, high, rise * wide * (1 - 2 * flat), flat * wide);
  });

test('an offset and the same offset back give the outline again', () => {
  fc.assert(
    fc.property(opening, fc.double({ min: 0.01, max: 2, noNaN: true }), (sight, amount) => {
      const [there, before] = [cornersOf(moved(moved(sight, amount), -amount)), cornersOf(sight)];
      expect(there).toHaveLength(before.length);
      for (const [k, { x, y }] of before.entries()) {
        expect(there[k]?.x).toBeCloseTo(x, 6);
        expect(there[k]?.y).toBeCloseTo(y, 6);
      }
    }),
  );
});

test('two offsets one after the other are one offset by their sum', () => {
  const amounts = fc.double({ min: 0.01, max: 1, noNaN: true });
  fc.assert(
    fc.property(opening, amounts, amounts, (sight, one, other) => {
      const [once, twice] = [moved(sight, one + other), moved(moved(sight, one), other)];
      expect(signedArea(twice)).toBeCloseTo(signedArea(once), 6);
    }),
  );
});

test('arcs stay concentric, and every edge lies the amount away', () => {
  fc.assert(
    fc.property(opening, fc.double({ min: 0.01, max: 1.5, noNaN: true }), (sight, amount) => {
      const [inner, outer] = [edgesOf(sight), edgesOf(moved(sight, amount))];
      for (const [k, edge] of inner.entries()) {
        const other = outer[k];
        if (edge.kind === 'arc' && other?.kind === 'arc') {
          expect(other.centre).toEqual(edge.centre);
          expect(distance(other.centre, other.to) - distance(edge.centre, edge.to)).toBeCloseTo(amount, 9);
        } else if (other !== undefined) {
          const long = distance(edge.from, edge.to);
          const [dx, dy] = [(edge.to.x - edge.from.x) / long, (edge.to.y - edge.from.y) / long];
          for (const { x, y } of [other.from, other.to])
            expect((x - edge.from.x) * dy - (y - edge.from.y) * dx).toBeCloseTo(amount, 9);
        }
      }
    }),
  );
});

// Machinery’s Handbook, "Segments of Circles" for radius 1 (from memory).
test.each([
  [60, 1.0472, 0.13397, 1.0, 0.09059],
  [90, 1.5708, 0.29289, 1.41421, 0.2854],
  [120, 2.0944, 0.5, 1.73205, 0.61418],
])('an arch of %i degrees adds its segment’s area and arc length', (_degrees, arc, rise, chord, area) => {
  const sight = arched(chord + 1, 4, rise, 0.5);
  expect(signedArea(sight)).toBeCloseTo((chord + 1) * 4 + area, 4);
  expect(perimeter(sight)).toBeCloseTo(4 + 4 + (chord + 1) + 1 + arc, 4);
});

test('a semicircular arch offsets to a semicircular one with what its flats need', () => {
  const panel = moved(arched(10, 20, 4, 1), 0.25);
  const arc = edgesOf(panel).find(({ kind }) => kind === 'arc');
  if (arc?.kind !== 'arc') throw new Error('no arc');
  expect(distance(arc.centre, arc.to)).toBeCloseTo(4.25, 9);
  expect(Math.abs(arc.from.x - arc.to.x)).toBeCloseTo(2 * Math.sqrt(4 * (8 + 0.5 - 4)), 9);
});

test('an arch without flats is extended to where its sides meet it', () => {
  const panel = moved(arched(10, 20, 2, 0), 0.25);
  expect(edgesOf(panel)).toHaveLength(4);
  for (const edge of edgesOf(panel))
    if (edge.kind === 'arc')
      expect(distance(edge.centre, edge.from)).toBeCloseTo(distance(edge.centre, edge.to), 9);
});

test('a square opening grows and shrinks by twice the amount, until nothing is left of it', () => {
  const square = openingOutline(10, 20, null);
  expect(signedArea(moved(square, 0.5))).toBeCloseTo(11 * 21, 9);
  expect(signedArea(moved(square, -0.5))).toBeCloseTo(9 * 19, 9);
  expect(offset(square, -5)).toBeNull();
  expect(offset(square, -7)).toBeNull();
  expect(offset(square, 0)).toBe(square);
});

test('a clockwise outline goes outwards just the same', () => {
  const clockwise: Outline = {
    start: { x: 0, y: 0 },
    runs: [
      { kind: 'line', to: { x: 0, y: 4 } },
      { kind: 'line', to: { x: 3, y: 4 } },
      { kind: 'line', to: { x: 3, y: 0 } },
    ],
  };
  expect(signedArea(moved(clockwise, 1))).toBeCloseTo(-30, 9);
});

test('an edge that its neighbours leave no length is dropped, and they meet without it', () => {
  // A square with one corner nipped off by 1/2: inwards the nip vanishes.
  const nipped: Outline = {
    start: { x: 0, y: 0 },
    runs: [
      { kind: 'line', to: { x: 10, y: 0 } },
      { kind: 'line', to: { x: 10, y: 9.5 } },
      { kind: 'line', to: { x: 9.5, y: 10 } },
      { kind: 'line', to: { x: 0, y: 10 } },
    ],
  };
  expect(edgesOf(moved(nipped, -0.5))).toHaveLength(5);
  expect(edgesOf(moved(nipped, -2))).toHaveLength(4);
  expect(signedArea(moved(nipped, -2))).toBeCloseTo(36, 9);
});

test('an arc left no radius is dropped with what it rounded', () => {
  const rounded: Outline = {
    start: { x: 0, y: 0 },
    runs: [
      { kind: 'line', to: { x: 10, y: 0 } },
      { kind: 'line', to: { x: 10, y: 9 } },
      { kind: 'arc', to: { x: 9, y: 10 }, centre: { x: 9, y: 9 }, clockwise: false },
      { kind: 'line', to: { x: 0, y: 10 } },
    ],
  };
  expect(signedArea(moved(rounded, 1))).toBeCloseTo(144 - 4 + Math.PI, 9);
  expect(signedArea(moved(rounded, -2))).toBeCloseTo(36, 9);
});
