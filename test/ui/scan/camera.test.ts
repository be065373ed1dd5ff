// @vitest-environment node

import { expect, test } from 'vitest';
import { SteadyReads } from '#ui/scan/camera.ts';

test('a sticker that stays before the camera is one scan', () => {
  const reads = new SteadyReads();
  const times = [0, 150, 300, 2000, 4000, 6000];
  expect(times.map((at) => reads.take('803AX3UERH', at))).toEqual([true, false, false, false, false, false]);
});

test('another sticker is a scan at once, and the first one again after it', () => {
  const reads = new SteadyReads();
  expect(reads.take('803AX3UERH', 0)).toBe(true);
  expect(reads.take('5Q2M8N1KX7', 150)).toBe(true);
  expect(reads.take('803AX3UERH', 300)).toBe(true);
});

test('a sticker taken away and held up again later is a second scan', () => {
  const reads = new SteadyReads();
  expect(reads.take('803AX3UERH', 0)).toBe(true);
  expect(reads.take('803AX3UERH', 2600)).toBe(true);
});
