/**
 * Makes a finger that was held down on a field tap it. The browser means a menu by a long press: it gives the field the focus
 * and makes no click, and what comes with a tap (the keys on the screen, the calendar) would stay away. The
 * click comes when the finger is off the glass: with most systems the menu is asked for before that, with
 * Windows after it. Returns what ends it.
 */
export function tapHeldFields(target: Window): () => void {
  let fingers = 0;
  let held: HTMLInputElement | null = null;
  const onTouch = ({ touches }: TouchEvent) => {
    fingers = touches.length;
    if (fingers === 0) tap();
  };
  const onMenu = (event: MouseEvent) => {
    if (!isTouch(event) || !(event.target instanceof HTMLInputElement) || event.target.type !== 'text')
      return;
    held = event.target;
    if (fingers === 0) tap();
  };
  function tap(): void {
    const field = held;
    held = null;
    field?.click();
  }
  const names = ['touchstart', 'touchend', 'touchcancel'] as const;
  for (const name of names) target.addEventListener(name, onTouch, { capture: true, passive: true });
  target.addEventListener('contextmenu', onMenu, { capture: true });
  return () => {
    for (const name of names) target.removeEventListener(name, onTouch, { capture: true });
    target.removeEventListener('contextmenu', onMenu, { capture: true });
  };
}

function isTouch(event: MouseEvent): boolean {
  return 'pointerType' in event && event.pointerType === 'touch';
}
