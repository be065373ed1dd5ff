import type { Page } from '@playwright/test';
import type { Units } from '#core/length/units.ts';

/** The sizes of screen at which the figures are taken, by their width. */
export const SIZES = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
] as const;

/** What a setup shows at one size of screen: each numeral's height in pixels, by "setting" or "setting@place", and how many words there are beside its drawing. */
export interface SetupFigures {
  readonly heights: Readonly<Record<string, number>>;
  readonly words: number;
}

/** A setup at both sizes, and the taps from its scan until it is marked. */
export interface SetupRecord {
  readonly taps: number;
  readonly at: Readonly<Record<string, SetupFigures>>;
}

/** Setups by the job's units and their stage. */
export type SetupTable = Readonly<Record<Units, Readonly<Record<string, SetupRecord>>>>;

/** The typeface's digits stand so high, as a share of its size. */
const DIGIT = 0.668;

/** Reads a setup off the screen. */
export async function figuresOf(page: Page): Promise<SetupFigures> {
  return page.evaluate((digit) => {
    const heights: Record<string, number> = {};
    for (const cell of document.querySelectorAll<HTMLElement>('[data-setting]')) {
      const { setting = '', place } = cell.dataset;
      const numeral = cell.querySelector('button .value') ?? cell;
      const size = Number.parseFloat(getComputedStyle(numeral).fontSize) * digit;
      heights[place === undefined ? setting : `${setting}@${place}`] = Math.round(size * 10) / 10;
    }
    const words = (element: Element): number =>
      [...element.childNodes].reduce((sum, child) => {
        if (child instanceof Element)
          return child.matches('svg, .hidden, style, script') ? sum : sum + words(child);
        return sum + (child.textContent ?? '').split(/\s+/).filter((word) => word !== '').length;
      }, 0);
    return { heights, words: words(document.body) };
  }, DIGIT);
}
