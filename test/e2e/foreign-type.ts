import type { Page } from '@playwright/test';
import { withoutGlyph } from '../typeface.ts';

/** Waits until a page has its typeface, in each weight: before that its words are as wide as those of another one. */
export async function typefaceLoaded(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await Promise.all([...document.fonts].map((face) => face.load()));
    await document.fonts.ready;
  });
}

/**
 * Words on a page that the browser takes from a typeface of the machine instead of the one that the screens bring with them: such
 * words are wider or narrower on the next machine, and a sign may be a box there.
 */
export async function foreignTypeOn(page: Page): Promise<string[]> {
  await typefaceLoaded(page);
  const { families, text } = await page.evaluate(() => {
    const own = 'Atkinson Hyperlegible';
    const families = new Set<string>();
    let text = '';
    if (![...document.fonts].some(({ family, status }) => family.includes(own) && status === 'loaded'))
      families.add(`${own} is not loaded`);
    for (const element of document.body.querySelectorAll<HTMLElement>('*')) {
      if (element.matches('script, style')) continue;
      const words = [...element.childNodes]
        .map((node) => (node instanceof Text ? node.data : ''))
        .join('')
        .trim();
      const field = element instanceof HTMLInputElement ? element.value + element.placeholder : '';
      text += words + field;
      const { fontFamily } = getComputedStyle(element);
      const shows = words !== '' || element.matches('input, select, textarea');
      if (shows && !fontFamily.replace(/^["']/, '').startsWith(own))
        families.add(`${fontFamily} for ${element.tagName.toLowerCase()}: ${words.slice(0, 40)}`);
    }
    return { families: [...families], text };
  });
  return [...families, ...withoutGlyph(text).map((one) => `no glyph for ${one}`)];
}
