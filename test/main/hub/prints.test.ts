import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import pino from 'pino';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type PrintState, printedAnswer, printState, printTaken } from '#core/api/prints-api.ts';
import { jobSaved } from '#core/api/jobs-api.ts';
import { shopAnswer } from '#core/api/shop-api.ts';
import { stocksAnswer } from '#core/api/stocks-api.ts';
import { calibrationPdf } from '#labels/stickers/calibration-pdf.ts';
import { type Hub, startHub } from '#main/hub/hub.ts';
import { type Paper, type PrintSystem, refused } from '#main/printing/printer.ts';
import { planOf } from '../store/small-shop.ts';

let data: string;
let hub: Hub;
let sent: { printer: string; paper: Paper }[];
let outcome: (signal: AbortSignal) => ReturnType<PrintSystem['print']>;

/** A printer that does as the test says. */
const printing: PrintSystem = {
  list: async () => ({ ok: true, printers: [{ name: 'Labels', accepting: true, state: 'idle' }] }),
  print: (printer, paper, signal) => {
    sent.push({ printer, paper });
    return outcome(signal);
  },
};

beforeEach(async () => {
  data = mkdtempSync(join(tmpdir(), 'shoulderline-prints-'));
  sent = [];
  outcome = async () => ({ ok: true });
  hub = await startHub({
    data,
    port: 0,
    host: '127.0.0.1',
    demo: true,
    version: 'test',
    logger: pino({ level: 'silent' }),
    printing,
  });
});
afterEach(async () => {
  await hub.stop();
  rmSync(data, { recursive: true, force: true });
});

const JOB = 'millbrook-boot-room';

async function ask(method: string, path: string, body?: object): Promise<{ status: number; json: unknown }> {
  const response = await fetch(`${hub.url}/api${path}`, {
    method,
    ...(body === undefined
      ? {}
      : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
  });
  return { status: response.status, json: await response.json() };
}

const stateOf = async (id: string): Promise<PrintState> =>
  printState.parse((await ask('GET', `/prints/${id}`)).json);
async function begin(body: object): Promise<string> {
  const { status, json } = await ask('POST', '/prints', { job: JOB, printer: 'Labels', ...body });
  expect(status).toBe(202);
  return printTaken.parse(json).id;
}
async function printed(body: object): Promise<PrintState> {
  const id = await begin(body);
  return vi.waitFor(
    async () => {
      const state = await stateOf(id);
      expect(state.state).not.toMatch(/making|sending/);
      return state;
    },
    { timeout: 20_000, interval: 50 },
  );
}
const record = async () => printedAnswer.parse((await ask('GET', `/jobs/${JOB}/printed`)).json).codes;
const codesOf = (door: string) =>
  planOf(hub.store.jobs.get(JOB))
    .doors.find((each) => each.door === door)
    ?.parts.map(({ code }) => code) ?? [];

test('the printers are listed', async () => {
  expect((await ask('GET', '/printers')).json).toEqual({
    printers: [{ name: 'Labels', accepting: true, state: 'idle' }],
  });
});

test('a range of stickers is printed and kept; the same again is kept as a reprint', async () => {
  const codes = codesOf('BENCH-1');
  expect(await printed({ kind: 'stickers', stock: 'letter-3x10', codes, by: 'Ann' })).toMatchObject({
    state: 'printed',
    made: 5,
    of: 5,
  });
  expect(sent[0]).toMatchObject({ printer: 'Labels', paper: { media: 'letter' } });
  expect(
    Buffer.from(sent[0]?.paper.pdf ?? [])
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-');
  const more = [...codes.slice(0, 2), ...codesOf('BENCH-2').slice(0, 1)];
  await printed({ kind: 'stickers', stock: 'roll-2x1', codes: more });
  expect(sent[1]?.paper.media).toBeUndefined();
  const kept = await record();
  const times = (code: string | undefined) => kept[code ?? '']?.map(({ reprint, stock }) => [reprint, stock]);
  expect(Object.keys(kept).toSorted()).toEqual([...codes, more[2] ?? ''].toSorted());
  expect(times(codes[0])).toEqual([
    [false, 'letter-3x10'],
    [true, 'roll-2x1'],
  ]);
  expect(times(more[2])).toEqual([[false, 'roll-2x1']]);
  expect(kept[codes[0] ?? '']?.[0]).toMatchObject({ printer: 'Labels', by: 'Ann' });
});

test('a printer that fails gives its words, and the stickers stay to be printed', async () => {
  outcome = async () => refused('printer-stopped', { printer: 'Labels', reason: 'out of labels' });
  const state = await printed({ kind: 'stickers', codes: codesOf('KEYS-1') });
  expect(state).toMatchObject({ state: 'failed', code: 'printer-stopped' });
  expect(state.message).toContain('out of labels');
  expect(await record()).toEqual({});
});

test('a print can be taken back, and is not kept as printed', async () => {
  outcome = (signal) =>
    new Promise((done) => signal.addEventListener('abort', () => done(refused('cancelled'))));
  const id = await begin({ kind: 'stickers', codes: codesOf('KEYS-1') });
  await vi.waitFor(async () => expect((await stateOf(id)).state).toBe('sending'));
  expect((await ask('DELETE', `/prints/${id}`)).status).toBe(200);
  await vi.waitFor(async () => expect((await stateOf(id)).state).toBe('cancelled'));
  expect(await record()).toEqual({});
});

test('papers are printed door by door and leave no print record', async () => {
  const state = await printed({ kind: 'cards', paper: 'a4', doors: ['BENCH-1', 'KEYS'] });
  expect(state).toEqual({ state: 'printed', made: 2, of: 2 });
  expect(sent[0]?.paper).toMatchObject({ media: 'a4', title: 'Set-up cards for Millbrook boot room' });
  expect(await record()).toEqual({});
});

test('a calibration page goes to the printer and leaves no print record', async () => {
  expect(await printed({ kind: 'calibration', stock: 'a4-3x8' })).toEqual({
    state: 'printed',
    made: 1,
    of: 1,
  });
  expect(sent[0]?.paper).toMatchObject({ media: 'a4', title: 'Calibration of a4-3x8' });
  expect(sent[0]?.paper.pdf).toEqual(await calibrationPdf('a4-3x8'));
  expect(await record()).toEqual({});
});

test('stickers and the calibration page are printed on a stock of the shop’s own', async () => {
  const shop = shopAnswer.parse((await ask('GET', '/shop')).json);
  const strip = { kind: 'roll', label: { width: '5', height: '3' }, gap: '1/8', corner: '0', dpi: 300 };
  const profile = { ...shop.profile, stocks: { strip } };
  const { revision, ...kept } = shop;
  expect((await ask('PUT', '/shop', { revision, shop: { ...kept, profile } })).status).toBe(200);
  expect(stocksAnswer.parse((await ask('GET', '/stocks')).json).stocks.at(-1)).toEqual({
    name: 'strip',
    kind: 'roll',
    sizes: 'Roll: stickers of 5 × 3\u00a0in, 300 dots per inch',
    positions: 1,
    own: true,
  });
  expect((await printed({ kind: 'calibration', stock: 'strip' })).state).toBe('printed');
  const codes = codesOf('BENCH-1').slice(0, 1);
  expect((await printed({ kind: 'stickers', stock: 'strip', codes })).state).toBe('printed');
  expect((await record())[codes[0] ?? '']).toMatchObject([{ stock: 'strip', reprint: false }]);
  for (const { paper } of sent) {
    const [page] = (await PDFDocument.load(paper.pdf)).getPages();
    expect(page?.getSize()).toEqual({ width: 360, height: 216 });
    expect(paper.media).toBeUndefined();
  }
});

test('the stocks are listed with their sizes in words, and each has a page to hold against it', async () => {
  const { stocks } = stocksAnswer.parse((await ask('GET', '/stocks')).json);
  expect(stocks.map(({ name, sizes, positions }) => [name, sizes, positions])).toEqual([
    ['letter-3x10', 'Sheet 8\u00a01/2 × 11\u00a0in: 3 × 10 stickers of 2\u00a05/8 × 1\u00a0in', 30],
    ['a4-3x8', 'Sheet 210 × 297\u00a0mm: 3 × 8 stickers of 70 × 36\u00a0mm', 24],
    ['roll-2x1', 'Roll: stickers of 2 × 1\u00a0in, 203 dots per inch', 1],
    ['roll-3x1', 'Roll: stickers of 3 × 1\u00a0in, 203 dots per inch', 1],
    ['roll-4x2', 'Roll: stickers of 4 × 2\u00a0in, 203 dots per inch', 1],
  ]);
  expect(stocks.some(({ own }) => own)).toBe(false);
  const page = await fetch(`${hub.url}/api/stocks/roll-4x2/calibration.pdf`);
  expect(new Uint8Array(await page.arrayBuffer())).toEqual(await calibrationPdf('roll-4x2'));
  expect((await ask('GET', '/stocks/attic-1x1/calibration.pdf')).status).toBe(404);
});

test('stickers are counted while they are made, and taken back they never reach the printer', async () => {
  const doors = [{ mark: 'H', quantity: 600, opening: { width: '16', height: '30' } }];
  const file = { format: 1, job: 'Harbour flats', units: 'in', doors };
  const { id: job } = jobSaved.parse((await ask('POST', '/jobs', file)).json);
  const id = await begin({ job, kind: 'stickers' });
  const seen = await vi.waitFor(
    async () => {
      const state = await stateOf(id);
      expect(state.made).toBeGreaterThan(0);
      return state;
    },
    { timeout: 20_000, interval: 1 },
  );
  expect(seen).toMatchObject({ state: 'making', of: 3000 });
  expect(seen.made).toBeLessThan(3000);
  await ask('DELETE', `/prints/${id}`);
  await vi.waitFor(async () => expect((await stateOf(id)).state).toBe('cancelled'));
  expect((await stateOf(id)).made).toBeLessThan(3000);
  expect(sent).toEqual([]);
});

test('stickers printed in the browser’s own dialog are kept each as what it is: printed, or printed again', async () => {
  const [first = '', second = ''] = codesOf('BENCH-1');
  const report = async (...codes: string[]) =>
    (await ask('POST', `/jobs/${JOB}/printed`, { codes, stock: 'roll-3x1' })).status;
  expect(await report(first)).toBe(200);
  expect(await report(first, second, second)).toBe(200);
  const again = (code: string, kept: Awaited<ReturnType<typeof record>>) =>
    kept[code]?.map(({ reprint }) => reprint);
  const kept = await record();
  expect([again(first, kept), again(second, kept)]).toEqual([[false, true], [false]]);
  expect(await report(first, '0000000000')).toBe(404);
  expect(await record()).toEqual(kept);
});

test('what cannot be made says why, and what is not known is refused', async () => {
  const why = async (body: object) => (await printed(body)).message ?? '';
  expect(await why({ kind: 'templates', doors: ['BENCH-1'] })).toContain('arch');
  expect(await why({ kind: 'rods', doors: ['ATTIC'] })).toContain('ATTIC');
  expect(await why({ kind: 'stickers', stock: 'attic-1x1' })).toContain('letter-3x10');
  expect(await why({ kind: 'calibration', stock: 'attic-1x1' })).toContain('letter-3x10');
  expect(await why({ kind: 'stickers', codes: ['0000000000'] })).toContain('0000000000');
  expect(sent).toEqual([]);
  const status = async (body: object) => (await ask('POST', '/prints', body)).status;
  expect(await status({ job: 'none', kind: 'cards', printer: 'Labels' })).toBe(404);
  expect(await status({ job: JOB, kind: 'poster', printer: 'Labels' })).toBe(400);
  expect(await status({ job: JOB, kind: 'cards' })).toBe(400);
  expect((await ask('GET', '/prints/none')).status).toBe(404);
});

test('an address may name the codes of some thousand parts', async () => {
  const codes = Array(10_000).fill('0000000000').join(',');
  const answer = await ask('GET', `/jobs/${JOB}/stickers.pdf?codes=${codes}`);
  expect(answer.status).toBe(400);
  expect(JSON.stringify(answer.json)).toContain('0000000000');
});

test('a job’s papers can be looked at as a PDF', async () => {
  const get = (query: string) => fetch(`${hub.url}/api/jobs/${JOB}/papers.pdf?${query}`);
  const sheet = await get('kind=sheet&paper=a4');
  expect([sheet.status, sheet.headers.get('content-type')]).toEqual([200, 'application/pdf']);
  expect(
    Buffer.from(await sheet.arrayBuffer())
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-');
  const statuses = async (...queries: string[]) =>
    Promise.all(queries.map(async (query) => (await get(query)).status));
  expect(
    await statuses(
      'kind=poster',
      'kind=cards&paper=a3',
      'kind=cards&doors=ATTIC',
      'kind=templates&doors=BENCH',
    ),
  ).toEqual([400, 400, 404, 404]);
});
