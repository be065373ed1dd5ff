import type { Attachment } from 'svelte/attachments';

/** So many times their least size numerals grow at most. */
const MOST = 3;
const STEPS = 6;

/**
 * Makes what stands in a box as large as the box has room for: sets `--times`, from 1 to `MOST`, to the most with which nothing
 * goes over the box's edges. What cannot even stand in it at its least size stays at that. Made anew whenever what it is given
 * changes, it measures again; the box's own size it watches itself.
 */
export function fill(..._shown: readonly unknown[]): Attachment<HTMLElement> {
  return (box) => {
    const fitsAt = (times: number): boolean => {
      box.style.setProperty('--times', String(times));
      return box.scrollHeight <= box.clientHeight && box.scrollWidth <= box.clientWidth;
    };
    const fit = (): void => {
      const times = mostThatFits(fitsAt, MOST);
      box.style.setProperty('--times', String(times));
    };
    fit();
    const watch = new ResizeObserver(fit);
    watch.observe(box);
    void document.fonts.ready.then(fit);
    return () => watch.disconnect();
  };
}

/** The most between 1 and `most` that fits, within a small step; 1 where nothing larger does. */
export function mostThatFits(fits: (times: number) => boolean, most: number): number {
  if (fits(most)) return most;
  let [low, high] = [1, most];
  for (let step = 0; step < STEPS; step += 1) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}
