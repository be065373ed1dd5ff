import type { Attachment } from 'svelte/attachments';
import { type Cell, type Extent, growWrapped, namesAt } from './grow.ts';

/** Room that the rounding of type to pixels and the line under a number take. */
const SLACK = 8;
const NOTHING: Extent = { width: 0, height: 0 };

/**
 * Makes the numbers of a list that stands alone in a box as large as it has room for: sets `--times` and `--names`, by which
 * they and their names stand larger than at least. It looks once at how they stand at their least size and reckons the rest,
 * since a setup must be painted at once; where places stand under them there is no room to be found, and it does not look.
 * Made anew whenever what it is given changes, it looks again; the box's own size it watches itself.
 */
export function fill(..._shown: readonly unknown[]): Attachment<HTMLElement> {
  return (box) => {
    grow(box, 1);
    const alone = box.querySelector(':scope > dl.alone');
    if (alone === null) return;
    let seen = '';
    const fit = (): void => {
      grow(box, 1);
      seen = sizeOf(box);
      grow(box, timesFor(box, alone));
    };
    fit();
    const watch = new ResizeObserver(() => {
      if (sizeOf(box) !== seen) fit();
    });
    watch.observe(box);
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

function sizeOf({ clientWidth, clientHeight }: HTMLElement): string {
  return `${clientWidth} ${clientHeight}`;
}

function timesFor(box: HTMLElement, alone: Element): number {
  const taken = [...box.children]
    .filter((child) => child !== alone)
    .reduce((sum, child) => sum + extentOf(child).height + SLACK, 0);
  return growWrapped([...alone.children].map(cellOf), {
    width: alone.clientWidth - SLACK,
    height: box.clientHeight - taken - SLACK,
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
