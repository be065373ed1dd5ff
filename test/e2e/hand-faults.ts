import type { Page } from '@playwright/test';
import { clippedOn } from './clipped.ts';

/** The sizes of screen that are held in a hand or stand on a bench: phones, and tablets, upright and lying. */
export const HAND_SIZES = [
  { width: 360, height: 640 },
  { width: 390, height: 844 },
  { width: 412, height: 915 },
  { width: 640, height: 360 },
  { width: 768, height: 1024 },
  { width: 800, height: 1280 },
  { width: 1024, height: 768 },
] as const;

/** A target for a gloved finger, and type for a hand's distance, in CSS pixels. */
const LEAST_TARGET = 48;
const LEAST_TYPE = 16;

/**
 * What a person could not read, hit or reach on a screen held in a hand: words cut or one over another, type under 16 px,
 * targets under 48 px, anything to be scrolled sideways, and, where there is a setup, what must be seen without scrolling:
 * stage, part and code, where it lies, the first number, and Done.
 */
export async function handFaults(page: Page): Promise<string[]> {
  const found = await page.evaluate(
    ([leastTarget, leastType]) => {
      const found = new Set<string>();
      const told = (element: Element) =>
        `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} "${element.textContent.trim().slice(0, 40)}"`;
      const root = document.documentElement;
      if (root.scrollHeight > innerHeight + 1 || root.scrollWidth > innerWidth + 1)
        found.add(`the page scrolls: ${root.scrollWidth} × ${root.scrollHeight}`);
      const sheets = [...document.querySelectorAll('[role="dialog"], [role="alertdialog"]')];
      const top = sheets.at(-1) ?? document.body;
      const seen = (element: Element) => element.checkVisibility() && element.closest('.hidden') === null;

      for (const element of top.querySelectorAll('*')) {
        const { overflowX } = getComputedStyle(element);
        if (!/auto|scroll/.test(overflowX) || !seen(element)) continue;
        if (element.scrollWidth > element.clientWidth + 1)
          found.add(`scrolls sideways by ${element.scrollWidth - element.clientWidth}: ${told(element)}`);
      }
      for (const target of top.querySelectorAll('button, a[href], input, select')) {
        if (!seen(target)) continue;
        const { width, height } = target.getBoundingClientRect();
        if (width < leastTarget - 0.5 || height < leastTarget - 0.5)
          found.add(`target of ${Math.round(width)} × ${Math.round(height)}: ${told(target)}`);
      }

      const texts: { words: string; rect: DOMRect; own: Element }[] = [];
      const walker = document.createTreeWalker(top, NodeFilter.SHOW_TEXT);
      for (let text = walker.nextNode(); text !== null; text = walker.nextNode()) {
        const own = text.parentElement;
        const words = (text.textContent ?? '').trim();
        if (words === '' || own === null || own.closest('option, style, script') !== null || !seen(own))
          continue;
        // Drawings are held by their own tests.
        if (own.closest('svg') !== null) continue;
        const size = Number.parseFloat(getComputedStyle(own).fontSize);
        // Numerators stand as small as on paper.
        if (size < leastType - 0.1 && own.closest('.fraction') === null)
          found.add(`type of ${size} px: ${words.slice(0, 40)}`);
        const range = document.createRange();
        range.selectNodeContents(text);
        for (const { left, top: above, width, height } of range.getClientRects()) {
          const lead = size * 0.28;
          if (width > 2 && height > 2 * lead + 2)
            texts.push({ words, own, rect: new DOMRect(left, above + lead, width, height - 2 * lead) });
        }
      }
      /** What stays in place while the rest is scrolled below it hides that rest, which is meant. */
      const staysOf = (element: Element): Element | null => {
        for (let at: Element | null = element; at !== null; at = at.parentElement)
          if (/sticky|fixed/.test(getComputedStyle(at).position)) return at;
        return null;
      };
      const scrollerOf = (element: Element): Element | null => {
        for (let at: Element | null = element; at !== null; at = at.parentElement)
          if (/auto|scroll/.test(getComputedStyle(at).overflowY)) return at;
        return null;
      };
      for (const [k, one] of texts.entries())
        for (const other of texts.slice(k + 1)) {
          const x = Math.min(one.rect.right, other.rect.right) - Math.max(one.rect.left, other.rect.left);
          const y = Math.min(one.rect.bottom, other.rect.bottom) - Math.max(one.rect.top, other.rect.top);
          if (x < 2 || y < 2 || one.own === other.own) continue;
          if (staysOf(one.own) !== staysOf(other.own) || scrollerOf(one.own) !== scrollerOf(other.own))
            continue;
          found.add(`over one another: ${one.words.slice(0, 30)} | ${other.words.slice(0, 30)}`);
        }

      const setup = document.querySelector('main[data-code][data-stage]');
      if (top === document.body && setup !== null) {
        const inView = (element: Element | null, name: string) => {
          if (element === null) return found.add(`not there: ${name}`);
          const { left, right, top: above, bottom } = element.getBoundingClientRect();
          const at = document.elementFromPoint((left + right) / 2, (above + bottom) / 2);
          const hit = at !== null && (element.contains(at) || at.contains(element));
          if (left < -1 || right > innerWidth + 1 || above < -1 || bottom > innerHeight + 1 || !hit)
            found.add(`not in view: ${name}`);
          return undefined;
        };
        const code = setup.getAttribute('data-code') ?? '';
        for (const each of setup.querySelectorAll('.title h2, .title .job')) inView(each, told(each));
        if (!setup.hasAttribute('data-gathering'))
          if (!(setup.querySelector('.title')?.textContent ?? '').replaceAll(/\s/g, '').includes(code))
            found.add('the code is not in the title');
        if (!setup.hasAttribute('data-gathering'))
          inView(setup.querySelector('[data-action="done"]'), 'Done');
        inView(setup.querySelector('[data-action="close"]'), 'Close');
        for (const word of setup.querySelectorAll(
          '[data-setting="fromEnd"] dd, [data-place-choice][aria-pressed="true"]',
        ))
          inView(word, told(word));
        const work = setup.querySelector('.work');
        const foot = setup.querySelector('[data-action="done"]')?.getBoundingClientRect().top ?? 0;
        if (work !== null && getComputedStyle(work).overflowY !== 'auto')
          for (const cell of setup.querySelectorAll<HTMLElement>('.settings [data-setting]'))
            if (cell.getBoundingClientRect().bottom > foot + 1)
              found.add(`under Done: ${cell.dataset.setting ?? ''} ${cell.dataset.place ?? ''}`);
        const first =
          setup.querySelector('.chosen [data-setting] .number') ??
          setup.querySelector('.made [data-setting] .number');
        if (first !== null) inView(first, 'the first number');
      }
      return [...found];
    },
    [LEAST_TARGET, LEAST_TYPE] as const,
  );
  return [...found, ...(await clippedOn(page))];
}
