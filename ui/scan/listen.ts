import { readCode } from '#core/codes/read-code.ts';
import { type Around, Burst, NOTHING_AROUND } from './burst.ts';

/** After this long without another key, what was typed so far is a person's. */
const PAUSE_MS = 400;

/** A text that is whole by itself: a part, a badge or a door’s line, its check character right where it has one. */
export function isWholeCode(text: string): boolean {
  const { kind } = readCode(text);
  return kind === 'part' || kind === 'badge' || kind === 'door';
}

/** What the listener tells: a scan, or that a person began to type where no field is, with what came so far. */
export interface Listener {
  readonly heard: (text: string) => void;
  readonly typed?: (text: string) => void;
}

/**
 * Listens for a scanner whatever has the focus. Times are those at which keys were pressed, not at which the page got
 * to them. The final Enter is kept from any focused button, and what the burst typed into a field is taken out again.
 * In a field or a sheet a text that is no whole code is left to it. `around` tells what the scanner is set to send around
 * every code. Returns what ends the listening.
 */
export function listenForScans(
  target: Window,
  { heard, typed }: Listener,
  around: () => Around = () => NOTHING_AROUND,
): () => void {
  const burst = new Burst(isWholeCode, around);
  let field: { element: HTMLInputElement; value: string } | null = null;
  let pause: ReturnType<typeof setTimeout> | undefined;
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    clearTimeout(pause);
    const element = event.target instanceof HTMLInputElement ? event.target : null;
    const before = element === null ? null : { element, value: element.value };
    const free = () => element === null && target.document.querySelector('[role="dialog"]') === null;
    const result = burst.hear({ key: event.key, at: event.timeStamp });
    switch (result.kind) {
      case 'building':
        if (result.keys === 1) field = before;
        if (result.keys === 0 || !free()) return;
        if (event.key === ' ') event.preventDefault();
        pause = setTimeout(() => typed?.(result.text), PAUSE_MS);
        return;
      case 'typed':
        if (!free()) return;
        event.preventDefault();
        typed?.(result.text);
        return;
      case 'ending':
        event.preventDefault();
        event.stopPropagation();
        return;
      case 'scan':
        if (!isWholeCode(result.text) && !free()) return;
        event.preventDefault();
        event.stopPropagation();
        if (field !== null) {
          field.element.value = field.value;
          field.element.dispatchEvent(new Event('input', { bubbles: true }));
        }
        field = null;
        heard(result.text);
        return;
      case 'other':
        return;
    }
  };
  target.addEventListener('keydown', onKey, { capture: true });
  return () => {
    clearTimeout(pause);
    target.removeEventListener('keydown', onKey, { capture: true });
  };
}
