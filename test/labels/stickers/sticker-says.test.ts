import { expect, test } from 'vitest';
import type { Plan } from '#core/plan/plan.ts';
import { labelIn, stickerPlace } from '#core/stickers/sticker-place.ts';
import { stickerSays } from '#core/stickers/sticker-says.ts';
import { BUILT_IN_STOCKS } from '#core/stickers/stock.ts';
import { stickerText } from '#labels/stickers/sticker-text.ts';
import { generatedPlans } from './generated-jobs.ts';

/** What stands on each sticker, without its place on the back, its code and its names; by what it is said to say. */
function textsOf(plan: Plan): (readonly [says: string, text: string])[] {
  const label = labelIn(BUILT_IN_STOCKS['letter-3x10'], plan.units);
  return plan.doors.flatMap((door) =>
    door.parts.map((part) => {
      const { size, notes } = stickerText(plan, door, part, stickerPlace(door, part, plan.units, label));
      return [
        stickerSays(part, plan.units),
        JSON.stringify([plan.units, size, ...notes.slice(0, -1)]),
      ] as const;
    }),
  );
}

test('stickers that read differently say different figures, over random jobs', () => {
  const texts = generatedPlans(12, 60).flatMap(textsOf);
  const read = new Map<string, Set<string>>();
  for (const [says, text] of texts) read.set(says, (read.get(says) ?? new Set()).add(text));
  expect([...read.values()].filter(({ size }) => size > 1)).toEqual([]);
  expect(read.size).toBeGreaterThan(200);
});
