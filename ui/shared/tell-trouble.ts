const told = new Set<string>();

/** Tells the browser's console of an error that kept something from being drawn: the same one once, however often it comes. */
export function tellTrouble(error: unknown): void {
  const name = String(error);
  if (told.has(name)) return;
  told.add(name);
  console.error(error);
}
