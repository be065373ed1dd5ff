import type { Locator, Page } from '@playwright/test';

/**
 * Puts a finger down on the middle of an element that has come to rest; returns what lifts it. It is a mouse that the browser
 * takes for a finger: then it tells a long press from a tap as a touch screen does, which touches that are sent to it as such
 * never become.
 */
export async function fingerOn(page: Page, element: Locator): Promise<() => void> {
  // Waits until it stays where it is, and nothing lies above it.
  await element.tap({ trial: true });
  const box = await element.boundingBox();
  if (box === null) throw new Error('there is nothing to put a finger on');
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setEmitTouchEventsForMouse', { enabled: true, configuration: 'mobile' });
  const at = { x: box.x + box.width / 2, y: box.y + box.height / 2, clickCount: 1 };
  // The browser answers none of these before the finger is lifted, and some not at all.
  const send = (type: 'mousePressed' | 'mouseReleased', buttons: number) => {
    session.send('Input.dispatchMouseEvent', { ...at, type, button: 'left', buttons }).catch(() => undefined);
  };
  send('mousePressed', 1);
  return () => {
    send('mouseReleased', 0);
  };
}
