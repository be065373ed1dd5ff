import { Burst } from './burst.ts';

/**
 * Listens for a scanner whatever has the focus, and calls back with what it read. The final Enter is kept from any
 * focused button, and what the burst typed into a field is taken out again. A prefix and suffix are what
 * the scanner is set to send around every code. Returns what ends the listening.
 */
export function listenForScans(
  target: Window,
  heard: (text: string) => void,
  { prefix, suffix }: { readonly prefix: string; readonly suffix: string } = { prefix: '', suffix: '' },
): () => void {
  const burst = new Burst(prefix, suffix);
  let field: { element: HTMLInputElement; value: string } | null = null;
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const element = event.target instanceof HTMLInputElement ? event.target : null;
    const before = element === null ? null : { element, value: element.value };
    const result = burst.hear({ key: event.key, at: event.timeStamp });
    if (result.kind === 'building' && result.keys === 1) field = before;
    if (result.kind !== 'scan') return;
    event.preventDefault();
    event.stopPropagation();
    if (field !== null) {
      field.element.value = field.value;
      field.element.dispatchEvent(new Event('input', { bubbles: true }));
    }
    field = null;
    heard(result.text);
  };
  target.addEventListener('keydown', onKey, { capture: true });
  return () => target.removeEventListener('keydown', onKey, { capture: true });
}
