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
