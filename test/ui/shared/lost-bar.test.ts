import 'fake-indexeddb/auto';
import { cleanup, render, screen, waitFor } from '@testing-library/svelte';
import { afterEach, expect, test, vi } from 'vitest';
import { TROUBLES, type Trouble } from '#core/api/office-api.ts';
import { live } from '#ui/hub/live.svelte.ts';
import LostBar from '#ui/shared/LostBar.svelte';
import { lostWords } from '#ui/shared/lost-words.ts';

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const FIGURES = {
  reason: 'ENOSPC',
  seq: 812,
  bytes: 10,
  was: 4711,
  count: 2,
  kept: 'shop.json.unreadable',
  folder: '/media/stick',
  days: 15,
  job: 'Hall cabinets',
};

test('each trouble is a sentence with all its figures', () => {
  for (const code of TROUBLES) {
    const words = lostWords({ code, figures: FIGURES });
    expect(words).toMatch(/^[A-Z\d].{20,}[.?]$/);
    expect(words).not.toMatch(/[{}]/);
  }
});

test('what keeps marks from being recorded is said first, and how many more there are', () => {
  const troubles: Trouble[] = [
    { code: 'log-gone', figures: { seq: 812 } },
    { code: 'cannot-write', figures: { reason: 'ENOSPC' } },
  ];
  render(LostBar, { troubles });
  const bar = screen.getByRole('alert');
  expect(bar.textContent).toMatch(/^\s*Nothing can be recorded now.*ENOSPC.*And 1 more/);
  expect(bar.dataset.lost).toBe('log-gone cannot-write');
});

test('with nothing to tell there is no bar', () => {
  render(LostBar, { troubles: [] });
  expect(screen.queryByRole('alert')).toBeNull();
});

test('a beat that says that the hub is not well has it asked once, and one that says that it is ends it', async () => {
  const told: Trouble[] = [{ code: 'pin-gone', figures: {} }];
  const asked = vi.fn(() =>
    Promise.resolve(Response.json({ ok: false, version: 'test', seq: 7, troubles: told })),
  );
  vi.stubGlobal('fetch', asked);
  live.hearBeat({ seq: 7, ok: true });
  expect(asked).not.toHaveBeenCalled();
  for (let k = 0; k < 3; k += 1) live.hearBeat({ seq: 7, ok: false });
  await waitFor(() => expect(live.troubles).toEqual(told));
  expect(asked).toHaveBeenCalledTimes(1);
  live.hearBeat({ seq: 7, ok: true });
  expect(live.troubles).toEqual([]);
});
