import type { Attachment } from 'svelte/attachments';
import { type Cell, type Extent, growWrapped, namesAt } from './grow.ts';

/** Room that the rounding of type to pixels and the line under a number take. */
const SLACK = 8;
const NOTHING: Extent = { width: 0, height: 0 };
/** Of what is seen at once of a scrolled setup numbers take no more than this, so that the piece is seen to follow. */
const OF_SCROLLED = 0.45;
/** Numbers that are too large for the screen get smaller by steps, but not below this, in CSS pixels: still the largest on it. */
const LEAST_SIZE = 32;
const STEP = 0.05;

/**
 * Makes the numbers of a list that stands alone in a box as large as it has room for: sets `--times` and `--names`, by which
 * they and their names stand larger than at least. It looks once at how they stand at their least size and reckons the rest,
 * since a setup must be painted at once; where places stand under them there is no room to be found. Where the setup is
 * scrolled, its box is as high as what stands in it: the room is then a share of what is seen at once. Numbers that are too
 * large for the screen are made smaller.
 * Made anew whenever what it is given changes, it looks again; the size of its room it watches itself.
 */
export function fill(..._shown: readonly unknown[]): Attachment<HTMLElement> {
  return (box) => {
    const alone = box.querySelector(':scope > dl.alone');
    let seen = '';
    const fit = (): void => {
      grow(box, 1);
      seen = sizeOf(box);
      if (alone !== null) grow(box, timesFor(box, alone));
      if (!isOver(box)) return;
      grow(box, 1);
      const least = LEAST_SIZE / typeOf(box);
      for (let times = 1 - STEP; times >= least && isOver(box); times -= STEP) grow(box, times);
    };
    fit();
    const watch = new ResizeObserver(() => {
      if (sizeOf(box) !== seen) fit();
    });
    watch.observe(box);
    if (box.parentElement !== null) watch.observe(box.parentElement);
    if (document.fonts.status !== 'loaded') void document.fonts.ready.then(fit);
    return () => watch.disconnect();
  };
}

function grow({ style }: HTMLElement, times: number): void {
  const to = times.toFixed(2);
  if (style.getPropertyValue('--times') === to) return;
  style.setProperty('--times', to);
  style.setProperty('--names', namesAt(times).toFixed(2));
}

/** What scrolls the box together with what stands beside it; null where it has room of its own. */
function scrollerOf({ parentElement }: HTMLElement): HTMLElement | null {
  return parentElement !== null && getComputedStyle(parentElement).overflowY === 'auto'
    ? parentElement
    : null;
}

/** By what the numbers are fitted, as a text to be compared. */
function sizeOf(box: HTMLElement): string {
  return `${box.clientWidth} ${(scrollerOf(box) ?? box).clientHeight}`;
}

/** In what size of type the numbers stand, in CSS pixels; those of places that are not worked on are small. */
function typeOf(box: HTMLElement): number {
  const number = box.querySelector('.cell:not(.small) :is(.number, .value)');
  return number === null ? LEAST_SIZE : Number.parseFloat(getComputedStyle(number).fontSize);
}

/** Does a number stand past the edge of its room? Where the box is scrolled, that is past its side. */
function isOver(box: HTMLElement): boolean {
  const { right, bottom } = box.getBoundingClientRect();
  const scrolled = scrollerOf(box) !== null;
  return [...box.querySelectorAll('[data-setting]')].some((cell) => {
    const each = cell.getBoundingClientRect();
    return each.right > right + 1 || (!scrolled && each.bottom > bottom + SLACK);
  });
}

function timesFor(box: HTMLElement, alone: Element): number {
  const taken = [...box.children]
    .filter((child) => child !== alone)
    .reduce((sum, child) => sum + extentOf(child).height + SLACK, 0);
  const scroller = scrollerOf(box);
  return growWrapped([...alone.children].map(cellOf), {
    width: alone.clientWidth - SLACK,
    height: (scroller === null ? box.clientHeight : scroller.clientHeight * OF_SCROLLED) - taken - SLACK,
  });
}

function cellOf(cell: Element): Cell {
  const part = (selector: string) => extentOf(cell.querySelector(selector));
  const line = part('.line');
  return {
    name: part('dt'),
    number: part('.number'),
    line: line.height === 0 ? line : { width: line.width, height: line.height + SLACK },
  };
}

function extentOf(element: Element | null): Extent {
  return element?.getBoundingClientRect() ?? NOTHING;
}
