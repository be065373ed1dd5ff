import { expect, test } from 'vitest';
import { layOut } from '#core/drawing/layout.ts';
import { stickerSign } from '#core/views/sticker-sign.ts';
import { svgOf } from '#core/drawing/svg.ts';

test('the sign is a sticker: its arrow points up, it names a part, draws it and has bars', () => {
  const svg = svgOf(layOut(stickerSign(), { width: 460, height: 265, text: 20 }));
  const arrow = /d="M([\d.]+) ([\d.]+)([^"]*)"[^>]*data-role="to-top"/.exec(svg);
  const heights = [...(arrow?.[3] ?? '').matchAll(/L[\d.]+ ([\d.]+)/g)].map(([, y]) => Number(y));
  expect(heights.length).toBe(6);
  for (const y of heights) expect(y).toBeGreaterThan(Number(arrow?.[2]));
  expect(svg).toContain('Top rail');
  for (const role of ['label', 'outline', 'sticker']) expect(svg).toContain(`data-role="${role}"`);
  expect(svg.match(/data-role="bar"/g)?.length).toBeGreaterThan(15);
});
