import { expect, test, vi } from 'vitest';
import { InHand } from '#ui/offline/in-hand.ts';

test('it is known since when nobody touched the screen, and whether something stands there that would be lost', () => {
  const clock = vi.spyOn(performance, 'now').mockReturnValue(1000);
  const hand = new InHand(window);
  document.body.innerHTML = '<main data-loaded="true"><input name="mark"></main>';
  clock.mockReturnValue(5000);
  expect([hand.quiet, hand.written, hand.open]).toEqual([4000, false, false]);
  document.querySelector('input')?.dispatchEvent(new Event('input', { bubbles: true }));
  expect([hand.quiet, hand.written, hand.open]).toEqual([0, true, false]);
  // A field that is gone again holds nothing.
  document.body.innerHTML = '<main data-code="7K2Q4MX8BD"></main>';
  expect([hand.written, hand.open]).toEqual([false, true]);
  document.body.innerHTML = '<button data-action="save-job"></button>';
  expect([hand.written, hand.open]).toEqual([true, false]);
  document.body.innerHTML = '<div role="dialog"></div>';
  expect([hand.written, hand.open]).toEqual([false, true]);
  clock.mockReturnValue(9000);
  window.dispatchEvent(new Event('pointerdown'));
  clock.mockReturnValue(9500);
  expect(hand.quiet).toBe(500);
  clock.mockRestore();
});
