import type { Page } from '@playwright/test';
import { cutInFields } from './cut-in-fields.ts';
import { typefaceLoaded } from './foreign-type.ts';

/**
 * Words that a person would not see whole: cut by a box that hides what overflows, past the window’s edge, or spilling out
 * of the box that they are written in. Where a box scrolls, what lies further down is not cut.
 */
export async function clippedOn(page: Page): Promise<string[]> {
  await typefaceLoaded(page);
  const found = await page.evaluate(() => {
    const SLACK = 1.5;
    /** Above and below its letters a line of type has room that may be cut. */
    const LEADING = 0.2;
    const found = new Set<string>();
    const sheets = [...document.querySelectorAll('[role="dialog"], [role="alertdialog"]')];
    const top = sheets.at(-1) ?? document.body;
    const walker = document.createTreeWalker(top, NodeFilter.SHOW_TEXT);
    for (let text = walker.nextNode(); text !== null; text = walker.nextNode()) {
      const words = (text.textContent ?? '').trim();
      const own = text.parentElement;
      if (words === '' || own === null || own.closest('.hidden, option, style, script') !== null) continue;
      const range = document.createRange();
      range.selectNodeContents(text);
      const { left, right, top: above, bottom: below, width, height } = range.getBoundingClientRect();
      if (width === 0 || height === 0) continue;
      const lead = LEADING * Number.parseFloat(getComputedStyle(own).fontSize);
      const rect = { left, right, top: above + lead, bottom: below - lead };
      const outside = (
        box: { left: number; right: number; top: number; bottom: number },
        x: boolean,
        y: boolean,
      ) =>
        (x && (rect.left < box.left - SLACK || rect.right > box.right + SLACK)) ||
        (y && (rect.top < box.top - SLACK || rect.bottom > box.bottom + SLACK));
      const tell = (how: string, box: Element) =>
        found.add(
          `${how} ${box.tagName.toLowerCase()}.${box.getAttribute('class') ?? ''}: ${words.slice(0, 50)}`,
        );
      let x = true;
      let y = own.closest('svg') === null;
      let first = y;
      for (let box: Element | null = own; box !== null && box !== document.body; box = box.parentElement) {
        if (box instanceof SVGElement && !(box instanceof SVGSVGElement)) continue;
        const style = getComputedStyle(box);
        if (style.display === 'inline' || style.display === 'contents') continue;
        if (/auto|scroll/.test(style.overflowX)) x = false;
        if (/auto|scroll/.test(style.overflowY)) y = false;
        const hides = style.overflowX === 'hidden' || box instanceof SVGSVGElement;
        if (first && outside(box.getBoundingClientRect(), x, false)) tell('spills', box);
        if (hides && outside(box.getBoundingClientRect(), x, y)) tell('cut', box);
        if (box.matches('button, a') && outside(box.getBoundingClientRect(), x, y)) tell('spills', box);
        first = false;
      }
      if (outside({ left: 0, right: innerWidth, top: 0, bottom: innerHeight }, x, y))
        tell('off the window', own);
    }
    for (const box of top.querySelectorAll<HTMLElement>('*')) {
      const style = getComputedStyle(box);
      if (box.closest('.hidden, svg') !== null || style.overflowY !== 'hidden') continue;
      if (box.scrollHeight > box.clientHeight + 1 || box.scrollWidth > box.clientWidth + 1)
        found.add(
          `hides ${box.tagName.toLowerCase()}.${box.className}: ${box.scrollWidth}×${box.scrollHeight} in ${box.clientWidth}×${box.clientHeight}`,
        );
    }
    return [...found];
  });
  return [...found, ...(await cutInFields(page))];
}
