import { fireEvent, render } from '@testing-library/svelte';
import { tick } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { SETTLE_MS } from '#ui/shared/settled.ts';
import Keypad from '#ui/shared/Keypad.svelte';
import PadKeys from '#ui/shared/PadKeys.svelte';
import ScreenKeys from '#ui/shared/ScreenKeys.svelte';

let now: number;
beforeEach(() => {
  now = 1000;
  vi.spyOn(performance, 'now').mockImplementation(() => now);
  vi.stubGlobal('requestAnimationFrame', (paint: (at: number) => void) => {
    paint(now);
    return 0;
  });
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  document.body.replaceChildren();
});

/** A tap of a finger whose press began at that moment. */
async function tapAt(key: Element | null, at: number): Promise<void> {
  if (key === null) throw new Error('no such key');
  const press = new MouseEvent('pointerdown', { bubbles: true, cancelable: true });
  Object.defineProperty(press, 'timeStamp', { value: at });
  await fireEvent(key, press);
  await fireEvent(key, new MouseEvent('click', { bubbles: true, cancelable: true, detail: 1 }));
}
const key = (name: string) => document.querySelector(`[data-key="${name}"]`);

test('keys take no press that began before they were there, nor for a moment after; then each types once', async () => {
  const typed: string[] = [];
  render(PadKeys, { keys: 'length', press: (each: string) => typed.push(each), back: () => undefined });
  for (const late of [-200, 0, 60, 180, 300, SETTLE_MS - 1]) await tapAt(key('3'), now + late);
  expect(typed).toEqual([]);
  await tapAt(key('3'), now + SETTLE_MS);
  expect(typed).toEqual(['3']);
});

test('Enter on a keyboard and an assistive tool press a key at once', async () => {
  const typed: string[] = [];
  render(PadKeys, { keys: 'count', press: (each: string) => typed.push(each), back: () => undefined });
  await fireEvent.click(key('3') as Element, { detail: 0 });
  expect(typed).toEqual(['3']);
});

test('keys that change under the finger settle anew', async () => {
  const typed: string[] = [];
  const props = { press: (each: string) => typed.push(each), back: () => undefined };
  const { rerender } = render(PadKeys, { ...props, keys: 'length' as const });
  now += 5000;
  await rerender({ ...props, keys: 'text' as const });
  await tapAt(key('3'), now + 100);
  expect(typed).toEqual([]);
  await tapAt(key('3'), now + SETTLE_MS);
  expect(typed).toEqual(['3']);
});

test('a second tap at once neither puts the keys away nor turns the case back', async () => {
  const field = document.createElement('input');
  Object.assign(field, { type: 'text', name: 'job', scrollIntoView: () => undefined });
  document.body.append(field);
  render(ScreenKeys);
  field.click();
  await tick();
  await tapAt(key('close-keys'), now + 150);
  expect(key('close-keys')).not.toBeNull();
  now += 5000;
  await tapAt(key('upper'), now);
  await tapAt(key('upper'), now + 150);
  expect(key('upper')?.getAttribute('aria-pressed')).toBe('false');
});

test('a pad that comes up under a finger is not closed or entered by its second tap', async () => {
  const closed = vi.fn();
  render(Keypad, { title: 'Type a code', keys: 'code', entered: vi.fn(), closed });
  const close = [...document.querySelectorAll('.row button')][0] ?? null;
  await tapAt(close, now + 200);
  expect(closed).not.toHaveBeenCalled();
  await tapAt(close, now + SETTLE_MS);
  expect(closed).toHaveBeenCalledOnce();
});
