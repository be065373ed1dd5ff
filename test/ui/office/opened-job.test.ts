import 'fake-indexeddb/auto';
import { fireEvent, render, screen } from '@testing-library/svelte';
import { beforeEach, expect, test, vi } from 'vitest';
import { live } from '#ui/hub/live.svelte.ts';
import Office from '#ui/office/Office.svelte';
import { openShop } from '../station/shop-for-stations.ts';

/** What a hub says that has printed nothing yet. */
const NOTHING = { jobs: [], codes: {}, stocks: [], printers: [] };

beforeEach(() => {
  vi.stubGlobal('fetch', (path: string) =>
    Promise.resolve(
      new Response(JSON.stringify(path.endsWith('/file') ? { id: 'x', revision: 1, file: {} } : NOTHING), {
        status: 200,
      }),
    ),
  );
  vi.stubGlobal(
    'ResizeObserver',
    class {
      observe = () => undefined;
      unobserve = () => undefined;
      disconnect = () => undefined;
    },
  );
  vi.spyOn(live, 'open').mockResolvedValue(undefined);
  openShop();
  live.lines = [...live.jobs.values()].map(({ line }) => line);
  render(Office, { locked: () => undefined });
  return () => {
    vi.unstubAllGlobals();
    vi.restoreAllMocks();
    live.lines = [];
  };
});

const tap = (name: string) => fireEvent.click(screen.getByRole('button', { name }));
const opened = () => document.querySelector<HTMLElement>('[data-opened]')?.dataset.opened;

test('the stickers’ button opens a job and never closes it; its name does', async () => {
  await tap('Stickers');
  await vi.waitFor(() => expect(opened()).toBe('stickers'));
  await tap('Stickers');
  await tap('Stickers');
  expect(opened()).toBe('stickers');
  expect(document.querySelector('[data-opened="stickers"] .paper')).not.toBeNull();
  await tap('Millbrook boot room');
  expect(opened()).toBeUndefined();
});

test('actual sizes are one tap from the job’s line, stand first below the list, and ask for a door before its parts', async () => {
  await tap('Actual sizes');
  await vi.waitFor(() => expect(opened()).toBe('sizes'));
  await tap('Actual sizes');
  expect(opened()).toBe('sizes');
  const panel = document.querySelector('[data-opened="sizes"]');
  expect(panel?.previousElementSibling?.querySelector('[data-action="show-sizes"]')).not.toBeNull();
  expect(document.querySelector('.paper')).toBeNull();
  expect(document.querySelector('[name="measured-part"]')).toBeNull();
  const door = screen.getByRole('combobox', { name: 'Door' });
  await fireEvent.change(door, { target: { value: 'BENCH-2' } });
  expect(document.querySelectorAll('[name="measured-part"] option')).toHaveLength(6);
  await tap('Stickers');
  expect(opened()).toBe('stickers');
});
