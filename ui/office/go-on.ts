import { on } from 'svelte/events';

/** Enter goes on from a field of letters or figures to the next one of its form; after the last one, to the button that saves. */
export function goOn(form: HTMLFormElement): () => void {
  return on(form, 'keydown', (event) => {
    const { key, target } = event;
    if (key !== 'Enter' || event.isComposing || event.defaultPrevented) return;
    if (!(target instanceof HTMLInputElement)) return;
    event.preventDefault();
    const stops = [...form.querySelectorAll<HTMLElement>('input, select, button:not([type="button"])')];
    const next = stops
      .slice(stops.indexOf(target) + 1)
      .find((each) => each instanceof HTMLButtonElement || isTyped(each));
    next?.focus();
    if (next instanceof HTMLInputElement) next.select();
  });
}

function isTyped(field: HTMLElement): boolean {
  return field instanceof HTMLInputElement && field.type === 'text' && !field.disabled;
}
