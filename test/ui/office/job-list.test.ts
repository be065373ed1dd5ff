import 'fake-indexeddb/auto';
import { fireEvent, render, screen } from '@testing-library/svelte';
import { beforeEach, expect, test, vi } from 'vitest';
import type { JobLine } from '#core/api/jobs-api.ts';
import { live } from '#ui/hub/live.svelte.ts';
import JobList from '#ui/office/JobList.svelte';

const line: JobLine = {
  id: 'rope-walk',
  job: 'Rope walk',
  units: 'in',
  doors: 2,
  parts: 10,
  left: 0,
  revision: 3,
  hash: 'x',
};
const fault = { path: 'doors[0].stile.width', code: 'behind-mortise', message: 'a wider stile' };

beforeEach(() => {
  live.loaded = true;
  return () => {
    live.lines = [];
  };
});

const openers = () => ({
  toggle: vi.fn(),
  stickers: vi.fn(),
  sizes: vi.fn(),
  fit: vi.fn(),
  revisions: vi.fn(),
});

function listed(lines: readonly JobLine[]) {
  live.lines = lines;
  const edit = vi.fn(async () => undefined);
  render(JobList, { shown: null, ...openers(), edit, remove: vi.fn(async () => undefined) });
  return edit;
}

test('a job with a fault says that it needs attention, why, and opens its form', async () => {
  const edit = listed([{ ...line, faults: [fault] }]);
  expect(
    document.querySelector('[data-attention="rope-walk"] p')?.textContent.replace(/\s+/g, ' ').trim(),
  ).toBe(
    'Needs attention: a wider stile. Until that is corrected, its last plan stands, with its stickers and marks.',
  );
  expect(screen.queryByText(/finished/)).toBeNull();
  await fireEvent.click(screen.getByText('Correct it'));
  expect(edit).toHaveBeenCalledWith('rope-walk');
});

test('of several faults the first is told, and how many there are; a job without any says nothing of it', () => {
  listed([
    { ...line, faults: [fault, { ...fault, message: 'another' }] },
    { ...line, id: 'quay', job: 'Quay', left: 2 },
  ]);
  expect(document.querySelector('[data-attention="rope-walk"]')?.textContent).toContain(
    'a wider stile; 2 things in all',
  );
  expect(document.querySelector('[data-attention="quay"]')).toBeNull();
});

test('a finished job is put away into a list of its own, and one with faults is not', async () => {
  listed([
    line,
    { ...line, id: 'quay', job: 'Quay', left: 2 },
    { ...line, id: 'loft', job: 'Loft', faults: [fault] },
  ]);
  const shown = () =>
    [...document.querySelectorAll('[data-job]')].map((each) => each.getAttribute('data-job'));
  expect(shown()).toEqual(['quay', 'loft']);
  await fireEvent.click(screen.getByText('Finished jobs (1)'));
  expect(shown()).toEqual(['quay', 'loft', 'rope-walk']);
  expect(document.querySelector('[data-finished-jobs]')?.textContent).toContain('finished');
});
