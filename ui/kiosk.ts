/**
 * Keeps the full screen: no key combination, no drop and no gesture of the browser or the window gets past it. Plain keys,
 * editing keys and copy and paste in a field stay as they are.
 */
export function keepKiosk(target: Pick<Window, 'addEventListener'>): void {
  const hold = (name: string, leaves: (event: Event) => boolean = () => true) =>
    target.addEventListener(
      name,
      (event) => {
        if (leaves(event)) event.preventDefault();
      },
      { capture: true, passive: false },
    );
  hold('keydown', (event) => event instanceof KeyboardEvent && leavesScreen(event));
  // Keys that the browser knows no name for come as a character that nobody can type.
  target.addEventListener(
    'keydown',
    (event) => {
      if (!/^\p{C}$/u.test(event.key)) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    },
    { capture: true },
  );
  hold('contextmenu');
  // What is dropped would be opened in place of the screens.
  for (const name of ['dragenter', 'dragover', 'drop', 'dragstart']) hold(name);
  for (const name of ['mousedown', 'mouseup', 'auxclick'])
    hold(name, (event) => event instanceof MouseEvent && OTHER_BUTTONS.has(event.button));
  hold('click', (event) => event instanceof MouseEvent && opensWindow(event));
  hold('wheel', (event) => event instanceof WheelEvent && event.ctrlKey);
}

/** The wheel pressed opens links beside; the two at the side go back and forward. */
const OTHER_BUTTONS = new Set([1, 3, 4]);
const EDITING = new Set(['a', 'c', 'v', 'x', 'z']);
/** Pasted without its looks, and done again. */
const EDITING_SHIFTED = new Set(['v', 'z']);
/** Keys of their own for the browser and other programs. */
const OTHERS =
  /^(Browser|Launch|Zoom|App|Media(?!Play|Stop|Track)|Mail|New$|Open$|Close$|Save$|Print$|Find$|Help$)/;

/** Would this key open, close or leave something that is not ours? */
export function leavesScreen(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>,
): boolean {
  if (/^F\d{1,2}$/.test(event.key) || OTHERS.test(event.key)) return true;
  if (event.altKey || event.metaKey) return true;
  if (event.key === 'Escape') return event.shiftKey || event.ctrlKey;
  return event.ctrlKey && !(event.shiftKey ? EDITING_SHIFTED : EDITING).has(event.key.toLowerCase());
}

/** Would a click on a link with this key held open it in another window? */
function opensWindow({ target, ctrlKey, metaKey, shiftKey }: MouseEvent): boolean {
  return (ctrlKey || metaKey || shiftKey) && target instanceof Element && target.closest('a') !== null;
}
