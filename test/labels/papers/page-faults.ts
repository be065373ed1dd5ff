import type { ReadPage, ReadText } from './read-pages.ts';

/** The box that a text's letters stand in. */
const boxOf = ({ x, y, width, size }: ReadText) => ({
  left: x,
  right: x + width,
  bottom: y - size * 0.02,
  top: y + size * 0.62,
});

/** Texts that stand on one another, a hair's breadth allowed. */
export function overlapping({ texts }: ReadPage): string[] {
  const boxes = texts.map((text) => ({ text: text.text, ...boxOf(text) }));
  return boxes.flatMap((a, k) =>
    boxes
      .slice(k + 1)
      .filter(
        (b) =>
          Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.3 &&
          Math.min(a.top, b.top) - Math.max(a.bottom, b.bottom) > 0.3,
      )
      .map((b) => `${a.text} / ${b.text}`),
  );
}

/** Texts that reach into the white that every printer leaves. */
export function outside({ texts, width, height }: ReadPage): string[] {
  return texts
    .filter((text) => {
      const { left, right, bottom, top } = boxOf(text);
      return left < 27.9 || right > width - 27.9 || bottom < 26 || top > height - 27.9;
    })
    .map(({ text }) => text);
}
