import 'fake-indexeddb/auto';
import { fireEvent, render, screen } from '@testing-library/svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { BinLine } from '#core/api/bin-api.ts';
import { live } from '#ui/hub/live.svelte.ts';
import BinList from '#ui/office/BinList.svelte';

const quay: BinLine = {
  id: 'quay',
  job: 'Quay doors',
  doors: 2,
  parts: 10,
  binned: '2026-11-25T08:15:00.000Z',
  marks: 4,
  begun: 1,
  finished: 1,
  printed: 10,
};
let bin: BinLine[];
let asked: string[];

beforeEach(() => {
  Object.assign(HTMLDialogElement.prototype, {
    showModal(this: HTMLDialogElement) {
      this.open = true;
    },
  });
  bin = [quay];
  asked = [];
  vi.stubGlobal('fetch', (path: string, init: { method: string }) => {
    if (init.method !== 'GET') {
      asked.push(`${init.method} ${path}`);
      bin = [];
    }
    if (init.method === 'DELETE') return Promise.resolve(new Response(null, { status: 204 }));
    const answer =
      path === '/api/bin'
        ? { jobs: bin }
        : init.method === 'POST'
          ? { id: 'quay', job: 'Quay doors', revision: 1 }
          : { jobs: [] };
    return Promise.resolve(new Response(JSON.stringify(answer), { status: 200 }));
  });
});
afterEach(() => {
  vi.unstubAllGlobals();
  live.lines = [];
});

async function openBin(): Promise<void> {
  render(BinList);
  await fireEvent.click(await screen.findByText('Bin (1)'));
}

test('a job is taken out of the bin with one tap', async () => {
  await openBin();
  expect(document.querySelector('[data-binned="quay"]')?.textContent).toMatch(
    /Quay doors\s*2\sdoors, 10\sparts · in the bin since Nov/,
  );
  await fireEvent.click(screen.getByText('Take out of the bin'));
  await screen.findByText('Quay doors is back, with its stickers and marks.');
  expect(asked).toEqual(['POST /api/bin/quay/restore']);
  expect(await screen.findByText('Nothing is in the bin.')).toBeDefined();
});

test('before a job is removed for good it is said what is lost with it, and Escape keeps it', async () => {
  await openBin();
  await fireEvent.click(screen.getByText('Remove for good'));
  const question = await screen.findByRole('alertdialog');
  expect([...question.querySelectorAll('[data-goes]')].map((each) => each.textContent)).toEqual([
    '1 finished door',
    '1 door begun',
    '4 marks',
    '10 printed stickers',
  ]);
  expect(question.textContent).toContain('Only a backup brings the job back.');
  await fireEvent.keyDown(question, { key: 'Escape' });
  expect(asked).toEqual([]);
  await fireEvent.click(screen.getByText('Remove for good'));
  await fireEvent.click(screen.getByText('Remove it for good'));
  await vi.waitFor(() => expect(asked).toEqual(['DELETE /api/bin/quay']));
});

test('of an empty bin nothing is said', async () => {
  bin = [];
  render(BinList);
  await vi.waitFor(() => expect(document.querySelector('[data-action="bin"]')).toBe(null));
});
