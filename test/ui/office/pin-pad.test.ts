import { render } from '@testing-library/svelte';
import { expect, test, vi } from 'vitest';
import PinPad from '#ui/office/PinPad.svelte';

test('the pad of a shop without a PIN goes away by itself, though the hub did not answer at first', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  let asked = 0;
  vi.stubGlobal('fetch', () => {
    asked += 1;
    return asked === 1
      ? Promise.reject(new Error('no answer'))
      : Promise.resolve(Response.json({ pin: false, open: true }));
  });
  const entered = vi.fn();
  const { container, unmount } = render(PinPad, { entered, closed: () => undefined });
  await vi.waitFor(() => expect(container.querySelector('[data-pin-pad]')).not.toBeNull());
  expect(entered).not.toHaveBeenCalled();
  await vi.advanceTimersByTimeAsync(1500);
  expect(entered).toHaveBeenCalledTimes(1);
  unmount();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});
