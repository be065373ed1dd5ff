import { expect, test } from 'vitest';
import { notToldYet } from '#main/hub/not-told-yet.ts';

const mark = (seq: number) => `id: ${seq}\nevent: mark\ndata: {"seq":${seq}}\n\n`;
const beat = 'event: beat\ndata: {"seq":3}\n\n';

test('marks up to the last one that was told are left out, whatever else there is stays in its order', () => {
  expect(notToldYet(mark(3) + beat + mark(4) + mark(5), 4)).toBe(beat + mark(5));
  expect(notToldYet(beat + mark(1), 0)).toBe(beat + mark(1));
  expect(notToldYet('', 4)).toBe('');
});
