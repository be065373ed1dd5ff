import 'fake-indexeddb/auto';
import { fireEvent, render, screen } from '@testing-library/svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { printedReport } from '#core/api/prints-api.ts';
import { emptyProgress } from '#core/marks/progress.ts';
import { stickerSays } from '#core/stickers/sticker-says.ts';
import { live, type LiveJob } from '#ui/hub/live.svelte.ts';
import { shop } from '#ui/hub/shop.svelte.ts';
import Printing from '#ui/office/Printing.svelte';
import { person } from '#ui/people/person.svelte.ts';
import { shownInstant } from '#core/words/day.ts';

/** An instant as a query sees it, which takes each space for a plain one. */
const read = (instant: string) => shownInstant(instant).replace(/\s/g, ' ');

interface Asked {
  readonly method: string;
  readonly path: string;
  readonly body: unknown;
}
let asked: Asked[];
let states: object[];
let printed: Record<string, object[]>;
let printers: object;
const stocks = [
  { name: 'letter-3x10', kind: 'sheet', sizes: 'Sheet 8 1/2 × 11 in', positions: 30, own: false },
  { name: 'strip', kind: 'roll', sizes: 'Roll: stickers of 5 × 3 in', positions: 1, own: true },
];

/** The hub as it answers in these tests. */
function answer({ method, path, body }: Asked): object {
  if (path === '/api/printers') return printers;
  if (path === '/api/stocks') return { stocks };
  if (path.endsWith('/printed')) {
    const once = { at: '2026-11-25T09:30:00.000Z', stock: 'letter-3x10', reprint: false };
    if (method === 'POST') for (const code of printedReport.parse(body).codes) printed[code] = [once];
    return { codes: printed };
  }
  if (path === '/api/prints') return { id: 'p1' };
  if (method === 'DELETE') {
    states = [{ state: 'cancelled', made: 0, of: 0, code: 'cancelled', message: 'Canceled.' }];
    return states[0] ?? {};
  }
  return (states.length > 1 ? states.shift() : states[0]) ?? {};
}

beforeEach(() => {
  asked = [];
  printed = {};
  states = [{ state: 'printed', made: 1, of: 1 }];
  printers = {
    printers: [
      { name: 'Off', accepting: true, state: 'stopped' },
      { name: 'Labels', description: 'By the saw', accepting: true, state: 'idle' },
    ],
  };
  vi.stubGlobal('fetch', (path: string, init: { method?: string; body?: string }) => {
    const request = {
      method: init.method ?? 'GET',
      path,
      body: init.body === undefined ? undefined : (JSON.parse(init.body) as unknown),
    };
    asked.push(request);
    // Each part of these stickers takes two.
    const headers = path.includes('/stickers.pdf') ? { 'x-stickers': '{"stickers":2}' } : {};
    return Promise.resolve(new Response(JSON.stringify(answer(request)), { status: 200, headers }));
  });
});
afterEach(() => {
  vi.unstubAllGlobals();
  person.signOff();
  shop.now = null;
  localStorage.clear();
});

const part = (name: string, code: string) => ({
  part: name,
  code,
  length: '20',
  width: '2',
  thickness: '3/4',
  stages: [],
});
const job = {
  line: { id: 'boot-room' },
  progress: emptyProgress('boot-room'),
  plan: {
    units: 'in',
    doors: [
      { door: 'A-1', mark: 'A', parts: [part('stile-left', '803AX3UERH'), part('panel', 'R01N0KHMKH')] },
      { door: 'B-1', mark: 'B', parts: [part('rail-bottom', '7H1MUGTJ70')] },
    ],
  },
} as unknown as LiveJob;

const posts = () => asked.filter(({ method }) => method === 'POST').map(({ body }) => body);
const button = (name: RegExp | string) => screen.findByRole('button', { name });

test('the first printer that works is offered, and a whole job goes to it', { timeout: 20_000 }, async () => {
  render(Printing, { job });
  await fireEvent.click(await button('Print'));
  await screen.findByText('Printed.');
  expect(posts()).toEqual([
    { kind: 'stickers', stock: 'letter-3x10', from: 1, job: 'boot-room', printer: 'Labels' },
  ]);
});

test(
  'a sticker that was printed says when, and is printed again with two taps',
  { timeout: 20_000 },
  async () => {
    printed = { R01N0KHMKH: [{ at: '2026-11-25T08:15:00.000Z', stock: 'roll-2x1', reprint: false }] };
    render(Printing, { job });
    await screen.findByText(`printed ${read('2026-11-25T08:15:00.000Z')}`);
    await fireEvent.click(await button(/Panel R01N0KHMKH/));
    await fireEvent.click(await button('Print these 1'));
    await screen.findByText('Printed.');
    expect(posts()).toMatchObject([{ codes: ['R01N0KHMKH'] }]);
    await button('Print');
  },
);

test('a whole door is chosen with one tap and let go with another', async () => {
  render(Printing, { job });
  await fireEvent.click(await button('A-1'));
  await button('Print these 2');
  await fireEvent.click(await button('A-1'));
  await button('Print');
});

test(
  'a range is chosen by its first and last sticker, and one by one only what is tapped',
  { timeout: 20_000 },
  async () => {
    render(Printing, { job });
    await fireEvent.click(await button(/Bottom rail 7H1MUGTJ70/));
    await screen.findByText('Print this, or tap the last one to print all up to it:');
    await fireEvent.click(await button(/Left stile 803AX3UERH/));
    await fireEvent.click(await button('Print these 3'));
    await screen.findByText('Printed.');
    await fireEvent.click(await button('One by one'));
    await fireEvent.click(await button(/Left stile 803AX3UERH/));
    await fireEvent.click(await button(/Bottom rail 7H1MUGTJ70/));
    await fireEvent.click(await button('Print these 2'));
    await vi.waitFor(() => expect(posts()).toHaveLength(2));
    expect(posts()).toMatchObject([
      { codes: ['803AX3UERH', 'R01N0KHMKH', '7H1MUGTJ70'] },
      { codes: ['803AX3UERH', '7H1MUGTJ70'] },
    ]);
  },
);

test('while it is made the count is shown, and it can be taken back', async () => {
  states = [{ state: 'making', made: 40, of: 90 }];
  render(Printing, { job });
  await fireEvent.click(await button('Print'));
  await screen.findByText('Being made: 40 of 90');
  expect(screen.getByRole('progressbar')).toHaveProperty('value', 40);
  await fireEvent.click(await button('Cancel'));
  await screen.findByText('Canceled.');
  expect(asked.some(({ method, path }) => method === 'DELETE' && path === '/api/prints/p1')).toBe(true);
});

test('a stock is chosen by its sizes, and its calibration page goes to the printer', async () => {
  render(Printing, { job });
  await screen.findByText('Sheet 8 1/2 × 11 in');
  const choice = screen.getByRole('combobox', { name: 'Sticker sheet or roll' });
  await fireEvent.change(choice, { target: { value: 'strip' } });
  await screen.findByText(/Roll: stickers of 5 × 3 in – the shop’s own/);
  expect(screen.queryByLabelText('First free sticker on the sheet')).toBe(null);
  await fireEvent.click(await button('Calibration page for this stock'));
  await screen.findByText('Printed.');
  expect(posts()).toEqual([{ kind: 'calibration', stock: 'strip', job: 'boot-room', printer: 'Labels' }]);
});

test('stickers opened in the browser are kept as printed once a person says that they were', async () => {
  render(Printing, { job });
  const link = await screen.findByRole('link', { name: 'Open the stickers to print' });
  link.addEventListener('click', (event) => event.preventDefault());
  await fireEvent.click(await button(/Panel R01N0KHMKH/));
  await fireEvent.click(link);
  await fireEvent.click(await button('No'));
  expect(screen.queryByText(/Were they printed/)).toBe(null);
  expect(posts()).toEqual([]);
  await fireEvent.click(link);
  await screen.findByText('Were they printed? Stickers that were opened: 1.');
  await fireEvent.click(await button('Yes, all of them'));
  await screen.findByText('Recorded as printed.');
  expect(posts()).toEqual([{ codes: ['R01N0KHMKH'], stock: 'letter-3x10' }]);
  await screen.findByText(`printed ${read('2026-11-25T09:30:00.000Z')}`);
  await button('Print');
});

test('papers opened in the browser are not asked about', async () => {
  render(Printing, { job });
  await fireEvent.change(await screen.findByRole('combobox', { name: 'What to print' }), {
    target: { value: 'rods' },
  });
  const link = await screen.findByRole('link', { name: 'Open these papers to print' });
  link.addEventListener('click', (event) => event.preventDefault());
  await fireEvent.click(link);
  expect(screen.queryByText(/Were they printed/)).toBe(null);
});

test('a printer that fails says so in its words', async () => {
  states = [
    { state: 'failed', made: 1, of: 1, code: 'printer-stopped', message: 'Labels is stopped: no paper.' },
  ];
  render(Printing, { job });
  await fireEvent.click(await button('Print'));
  await screen.findByText('Labels is stopped: no paper.');
});

test('without printers the reason stands there, and the PDF can be opened', async () => {
  printers = { printers: [], message: 'This machine has no printing program (CUPS).' };
  render(Printing, { job });
  await screen.findByText('This machine has no printing program (CUPS).');
  expect(screen.queryByRole('button', { name: 'Print' })).toBe(null);
  const address = (name: string) => screen.getByRole('link', { name }).getAttribute('href');
  expect(address('Open the stickers to print')).toContain('/api/jobs/boot-room/stickers.pdf');
  expect(address('Calibration page for this stock')).toBe('/api/stocks/letter-3x10/calibration.pdf');
});

test('a print carries the badge of who prints, and the stickers say so after', async () => {
  shop.now = { people: [{ badge: 'P-A1', name: 'Ada' }] } as unknown as typeof shop.now;
  printed = {
    R01N0KHMKH: [
      { at: '2026-11-25T08:15:00.000Z', stock: 'roll-2x1', reprint: false },
      { at: '2026-11-25T08:20:00.000Z', stock: 'roll-2x1', reprint: true, by: 'P-A1' },
    ],
  };
  render(Printing, { job });
  await screen.findByText(`printed ${read('2026-11-25T08:20:00.000Z')}, 2 times, by Ada`);
  const choice = screen.getByRole('combobox', { name: 'Who prints' });
  await fireEvent.change(choice, { target: { value: 'P-A1' } });
  await fireEvent.click(await button('Print'));
  await screen.findByText('Printed.');
  await fireEvent.change(choice, { target: { value: '' } });
  await fireEvent.click(await button('Print'));
  await vi.waitFor(() => expect(posts()).toHaveLength(2));
  expect(posts()[0]).toMatchObject({ kind: 'stickers', by: 'P-A1' });
  expect(posts()[1]).not.toHaveProperty('by');
});

test(
  'a spoiled blank’s replacement stands in an open list at once, and is what there is to print',
  { timeout: 20_000 },
  async () => {
    const once = { at: '2026-11-25T08:15:00.000Z', stock: 'roll-2x1', reprint: false };
    printed = { '803AX3UERH': [once], R01N0KHMKH: [once], '7H1MUGTJ70': [once] };
    const shown = render(Printing, { job });
    await screen.findAllByText(`printed ${read(once.at)}`);
    expect(screen.queryByText(/^\d+ stickers? to print$/)).toBe(null);
    const spoiled = { code: 'R01N0KHMKH', door: 'A-1', part: 'panel', number: 0, done: {}, proved: {} };
    const progress = {
      ...job.progress,
      parts: { R01N0KHMKH: { ...spoiled, replacedBy: '7K2Q4MX8BD' } },
    };
    await shown.rerender({ job: { ...job, progress } });
    await screen.findByText('1 sticker to print');
    await button(/Panel 7K2Q4MX8BD not printed/);
    expect(screen.queryByRole('button', { name: /R01N0KHMKH/ })).toBe(null);
    await fireEvent.click(await button('Choose the 1 to print'));
    await fireEvent.click(await button('Print these 1'));
    await screen.findByText('Printed.');
    expect(posts()).toMatchObject([{ codes: ['7K2Q4MX8BD'] }]);
  },
);

test('a sticker that was printed before the sizes changed says so; one printed with these sizes, or by an older version, does not', async () => {
  const once = { at: '2026-11-25T08:15:00.000Z', stock: 'roll-2x1', reprint: false };
  const rail = job.plan.doors[1]?.parts[0];
  if (rail === undefined) throw new Error('no rail');
  printed = {
    '803AX3UERH': [once],
    R01N0KHMKH: [{ ...once, says: '1:0000000000' }],
    '7H1MUGTJ70': [{ ...once, says: stickerSays(rail, 'in') }],
  };
  render(Printing, { job });
  const words = `printed ${shownInstant(once.at)}`;
  await button(`Panel R01N0KHMKH ${words}, before the sizes changed`);
  await button(`Left stile 803AX3UERH ${words}`);
  await button(`Bottom rail 7H1MUGTJ70 ${words}`);
  await screen.findByText('1 sticker to print');
});

test('where a part takes two stickers, the sheet goes on behind both, from a printer and from the browser alike', async () => {
  states = [{ state: 'printed', made: 1, of: 1, stickers: 2 }];
  render(Printing, { job });
  const first = await screen.findByLabelText<HTMLInputElement>('First free sticker on the sheet');
  const link = await screen.findByRole('link', { name: 'Open the stickers to print' });
  link.addEventListener('click', (event) => event.preventDefault());
  await fireEvent.click(await button(/Panel R01N0KHMKH/));
  await fireEvent.click(await button('Print these 1'));
  await vi.waitFor(() => expect(first.value).toBe('3'));
  await fireEvent.click(await button(/Panel R01N0KHMKH/));
  await fireEvent.click(link);
  await fireEvent.click(await button('Yes, all of them'));
  await vi.waitFor(() => expect(first.value).toBe('5'));
});

test('what another screen printed stands in an open list once the hub tells of it', async () => {
  render(Printing, { job });
  await screen.findAllByText('not printed');
  printed = { R01N0KHMKH: [{ at: '2026-11-25T08:15:00.000Z', stock: 'roll-2x1', reprint: false }] };
  live.stickerNews += 1;
  await screen.findByText(`printed ${read('2026-11-25T08:15:00.000Z')}`);
});
