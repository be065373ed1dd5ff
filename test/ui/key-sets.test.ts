// @vitest-environment node

import { expect, test } from 'vitest';
import { partCode } from '#core/codes/part-code.ts';
import { KEYS } from '#ui/shared/key-sets.ts';

test('every code that a sticker may bear can be typed on the pad, those too that end in I or O', () => {
  const keys = new Set<string>(KEYS.code);
  const last = new Set<string>();
  for (let k = 1; k <= 400; k += 1) {
    const code = partCode({ job: 'Millbrook boot room', mark: 'BENCH', k, part: 'panel', replacement: 0 });
    last.add(code.at(-1) ?? '');
    expect([...code].filter((sign) => !keys.has(sign))).toEqual([]);
  }
  expect([...last]).toEqual(expect.arrayContaining(['I', 'O']));
});
