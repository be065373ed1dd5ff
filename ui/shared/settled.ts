import type { Attachment } from 'svelte/attachments';

/**
 * How long keys that have just come, or changed, take no press: the second tap of a double tap was meant for what was there
 * before them. Systems count two taps as one double tap up to 300 ms apart; a gloved finger is a little slower.
 */
export const SETTLE_MS = 350;

/**
 * Makes the buttons in an element take no press of a finger or the mouse that began before they were on the screen, nor
 * within a moment after. `changes` reads what lets other keys stand at the same place: they settle anew with it. The moment a
 * press began is the event's own time stamp: a press that had to wait for a busy screen is still one from before.
 */
export function settled(changes: () => unknown = () => undefined): Attachment<HTMLElement> {
  return (node) => {
    changes();
    let from = performance.now() + SETTLE_MS;
    let taken = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    node.setAttribute('aria-disabled', 'true');
    const painted = requestAnimationFrame(() => {
      from = performance.now() + SETTLE_MS;
      timer = setTimeout(() => node.removeAttribute('aria-disabled'), SETTLE_MS);
    });
    const begins = (event: PointerEvent) => {
      taken = event.timeStamp >= from;
      // What is not taken leaves the focus where it is, too.
      if (!taken) stop(event);
    };
    /** A click that no pointer made (Enter, Space, an assistive tool) has no detail. */
    const ends = (event: MouseEvent) => {
      if (event.detail !== 0 && !taken) stop(event);
    };
    node.addEventListener('pointerdown', begins, { capture: true });
    node.addEventListener('click', ends, { capture: true });
    return () => {
      cancelAnimationFrame(painted);
      clearTimeout(timer);
      node.removeEventListener('pointerdown', begins, { capture: true });
      node.removeEventListener('click', ends, { capture: true });
    };
  };
}

function stop(event: Event): void {
  event.preventDefault();
  event.stopPropagation();
}
