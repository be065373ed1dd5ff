import 'fake-indexeddb/auto';
import { fireEvent, render, screen } from '@testing-library/svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { emptyProgress } from '#core/marks/progress.ts';
import { live } from '#ui/hub/live.svelte.ts';
import JobList from '#ui/office/JobList.svelte';
import MeasuredPanel from '#ui/office/MeasuredPanel.svelte';
import { openShop } from '../station/shop-for-stations.ts';

let asked: string[];
let brings: object;
let progress: object;
let printed: object;
const NOTHING = { revision: 1, disagreeing: 0, disagree: [], finished: [], outdated: 0, stickers: [] };
const OPENERS = {
  toggle: () => undefined,
  stickers: () => undefined,
  sizes: () => undefined,
  fit: () => undefined,
  revisions: () => undefined,
};
const AT = { seq: 1, id: 'a', at: '', station: 'milling' };

beforeEach(() => {
  // A dialog here has no way of its own to come up.
  Object.assign(HTMLDialogElement.prototype, {
    showModal(this: HTMLDialogElement) {
      this.open = true;
    },
  });
  asked = [];
  brings = NOTHING;
  printed = {};
  vi.stubGlobal('fetch', (path: string, init: { method: string }) => {
    if (init.method !== 'GET') asked.push(`${init.method} ${path}`);
    const answer = path.includes('/measured')
      ? brings
      : path.endsWith('/file')
        ? { id: 'x', revision: 1, file: {} }
        : path.endsWith('/progress')
          ? progress
          : path.endsWith('/printed')
            ? { codes: printed }
            : path === '/api/stickers'
              ? { jobs: [...live.jobs.keys()].map((id) => ({ id, toPrint: 12 })) }
              : { jobs: [] };
    return Promise.resolve(new Response(JSON.stringify(answer), { status: 200 }));
  });
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
  live.lines = [];
});

async function measure(): Promise<string> {
  openShop();
  const [job] = live.jobs.values();
  if (job === undefined) throw new Error('no job');
  render(MeasuredPanel, { job });
  const field = await screen.findByRole('textbox', { name: 'Stock thickness' });
  await vi.waitFor(() => expect(field).toHaveProperty('disabled', false));
  await fireEvent.input(field, { target: { value: '13/16' } });
  await fireEvent.click(screen.getByRole('button', { name: 'Recalculate' }));
  return `/api/jobs/${encodeURIComponent(job.line.id)}/measured`;
}

test('sizes as they came out that touch cut parts are asked about: what and by how much, what is finished, which stickers', async () => {
  const rail = { door: 'BENCH-1', part: 'rail-top', stage: 'mill', name: 'length' };
  const parts = ['stile-left', 'stile-right', 'rail-bottom', 'rail-top', 'panel'];
  brings = {
    revision: 1,
    disagreeing: 1,
    disagree: [{ code: 'a', ...rail, was: '13 7/8', now: '13 3/4' }],
    finished: ['BENCH-2'],
    outdated: 6,
    stickers: [
      ...parts.map((part) => ({ code: part, door: 'BENCH-1', part })),
      { code: 'b', door: 'BENCH-2', part: 'panel' },
    ],
  };
  const path = await measure();
  const question = await screen.findByRole('alertdialog');
  expect(asked).toEqual([`PUT ${path}?dry=1`]);
  expect(question.textContent).toMatch(/BENCH-1 · Top rail:.*\(1\/8 less\)/s);
  expect(question.textContent).toContain('Finished, and left as they are: BENCH-2.');
  expect(question.textContent).toContain('6 stickers carry the old sizes after this.');
  expect([...question.querySelectorAll('[data-outdated]')].map((each) => each.textContent)).toEqual([
    'BENCH-1: all 5 parts',
    'BENCH-2: Panel',
  ]);
  await fireEvent.click(screen.getByRole('button', { name: 'Go back, save nothing' }));
  expect(asked).toEqual([`PUT ${path}?dry=1`]);
});

test('sizes that touch nothing cut are taken at once, and say how many stickers are to print again', async () => {
  brings = { ...NOTHING, outdated: 2, stickers: [] };
  const path = await measure();
  await screen.findByText(/2 stickers were printed with the old sizes: print them again\./);
  expect(screen.queryByRole('alertdialog')).toBe(null);
  expect(asked).toEqual([`PUT ${path}?dry=1`, `PUT ${path}`]);
});

async function askToRemove(): Promise<{ remove: ReturnType<typeof vi.fn> }> {
  openShop();
  live.lines = [...live.jobs.values()].map(({ line }) => line);
  const remove = vi.fn(async () => undefined);
  render(JobList, { shown: null, ...OPENERS, edit: async () => undefined, remove });
  await fireEvent.click(await screen.findByRole('button', { name: 'To the bin' }));
  await screen.findByRole('alertdialog');
  return { remove };
}

test('before a running job goes into the bin it is said what goes with it, and a second tap puts it there', async () => {
  progress = {
    ...emptyProgress('x'),
    parts: {
      a: { code: 'a', door: 'BENCH-1', part: 'panel', number: 0, done: { mill: AT, raise: AT }, proved: {} },
      b: { code: 'b', door: 'BENCH-2', part: 'panel', number: 0, done: { mill: AT }, proved: {} },
    },
    doors: { 'BENCH-1': { done: { trim: AT } } },
  };
  printed = { a: [{ at: '2026-11-25T08:15:00.000Z', stock: 'roll-2x1', reprint: false }] };
  const { remove } = await askToRemove();
  const told = [...document.querySelectorAll('[data-goes]')].map((each) => each.textContent);
  expect(told).toEqual(['1 finished door', '1 door begun', '4 marks', '1 printed sticker']);
  expect(remove).not.toHaveBeenCalled();
  await fireEvent.click(screen.getByRole('button', { name: 'Into the bin with all of this' }));
  expect(remove).toHaveBeenCalledOnce();
});

test('a job that nothing was done of is kept or put into the bin with a second tap too', async () => {
  progress = emptyProgress('x');
  const { remove } = await askToRemove();
  await screen.findByText(/Nothing of it is marked or printed/);
  await fireEvent.click(screen.getByRole('button', { name: 'Keep the job' }));
  expect(screen.queryByRole('alertdialog')).toBe(null);
  expect(remove).not.toHaveBeenCalled();
});

test('a job’s line says how many of its stickers are to print, and asks again when that changes', async () => {
  openShop();
  live.lines = [...live.jobs.values()].map(({ line }) => line);
  render(JobList, {
    shown: null,
    ...OPENERS,
    edit: async () => undefined,
    remove: async () => undefined,
  });
  await screen.findByText('12 stickers to print');
});
