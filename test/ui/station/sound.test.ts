// @vitest-environment node

import { expect, test } from 'vitest';
import { SOUNDS } from '#ui/station/sound.ts';

test('no two answers sound alike: their rhythms differ, or their pitches by a fifth of a octave at least', () => {
  const runs = Object.entries(SOUNDS);
  const alike = runs.flatMap(([name, tones], k) =>
    runs.slice(k + 1).flatMap(([other, others]) => {
      const sameRhythm =
        JSON.stringify(tones.map(([, ms]) => ms)) === JSON.stringify(others.map(([, ms]) => ms));
      const near = tones.every(([pitch], n) => {
        const second = others[n]?.[0] ?? 0;
        return pitch === second || Math.abs(Math.log2(pitch / second)) < 0.2;
      });
      return sameRhythm && near ? [`${name} and ${other}`] : [];
    }),
  );
  expect(alike).toEqual([]);
});

test('every sound is short enough not to hold anybody up', () => {
  for (const [name, tones] of Object.entries(SOUNDS))
    expect(
      tones.reduce((sum, [, ms]) => sum + ms, 0),
      name,
    ).toBeLessThanOrEqual(750);
});
