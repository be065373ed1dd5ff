import { tick } from 'svelte';

/**
 * Puts the cursor into a field that a tap has just brought, with what stands there chosen, so that typing replaces it. The
 * keys on the screen come with it where a finger or the mouse did it, not where a keyboard's key did.
 */
export async function putCursor(
  find: () => HTMLInputElement | null | undefined,
  { detail }: { readonly detail: number },
): Promise<void> {
  await tick();
  const field = find();
  if (field === null || field === undefined) return;
  field.focus();
  if (detail > 0) field.click();
  field.select();
}

/** Enter goes on from a field of letters or figures to the next one of its form; after the last one, to the button that saves. */
export function goOn(event: KeyboardEvent): void {
  const { key, target, currentTarget: form } = event;
  if (key !== 'Enter' || event.isComposing || !(form instanceof HTMLFormElement)) return;
  if (!(target instanceof HTMLInputElement)) return;
  event.preventDefault();
  const stops = [...form.querySelectorAll<HTMLElement>('input, select, button:not([type="button"])')];
  const next = stops
    .slice(stops.indexOf(target) + 1)
    .find((each) => each instanceof HTMLButtonElement || isTyped(each));
  next?.focus();
  if (next instanceof HTMLInputElement) next.select();
}

function isTyped(field: HTMLElement): boolean {
  return field instanceof HTMLInputElement && field.type === 'text' && !field.disabled;
}
