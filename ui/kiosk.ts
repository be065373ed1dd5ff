/**
 * Keeps the full screen: no key combination of the browser or the window reaches it. Plain keys, editing keys and
 * copy and paste in a field stay as they are.
 */
export function keepKiosk(target: Pick<Window, 'addEventListener'>): void {
  target.addEventListener(
    'keydown',
    (event) => {
      if (leavesScreen(event)) event.preventDefault();
    },
    { capture: true },
  );
  target.addEventListener('contextmenu', (event) => event.preventDefault());
}

const EDITING = new Set(['a', 'c', 'v', 'x', 'z']);

/** Would this key open, close or leave something that is not ours? */
export function leavesScreen(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey'>): boolean {
  if (/^F\d{1,2}$/.test(event.key)) return true;
  if (event.altKey || event.metaKey) return true;
  return event.ctrlKey && !EDITING.has(event.key.toLowerCase());
}
