import { readdirSync, rmSync } from 'node:fs';
import { buffer, text } from 'node:stream/consumers';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { StoreBusy } from '#main/store/files/file-port.ts';
import { NotWanted } from '#main/work/lane.ts';
import { WorkDesk } from '#main/work/work-desk.ts';
import { planDocument } from '#main/store/documents/plan-document.ts';
import { holdNoPlanOver } from '#main/store/documents/plan-limit.ts';
import { liveHub } from '../hub/live-hub.ts';
import { milled } from '../store/small-shop.ts';
import { builtWorker } from './built-worker.ts';

let built: Awaited<ReturnType<typeof builtWorker>>;
beforeAll(async () => {
  built = await builtWorker();
});
afterAll(() => rmSync(built.folder, { recursive: true, force: true }));

const JOB = (quantity: number, id = 'hall') => ({
  format: 1,
  id,
  job: 'Hall',
  units: 'in',
  doors: [{ mark: 'A', quantity, opening: { width: '16', height: '30' } }],
});

/** The threads of this process (Linux). */
const threads = () => readdirSync('/proc/self/task');

test('a thread answers byte for byte what the hub’s own thread would: plans, reasons, stickers, papers', async () => {
  const own = await liveHub();
  const other = await liveHub({ worker: built.entry });
  for (const { ask } of [own, other]) {
    expect((await ask('POST', '/jobs', JOB(3))).status).toBe(201);
    expect(
      (
        await ask('POST', '/jobs', {
          ...JOB(230, 'long'),
          doors: [{ mark: 'L', quantity: 230, opening: { width: '18', height: '30' } }],
        })
      ).status,
    ).toBe(201);
  }
  for (const path of [
    '/jobs/hall?why=1',
    '/jobs/hall/doors/A-2',
    '/jobs/hall/doors/A-2?why=1',
    '/jobs/long',
    '/jobs/long/doors/L-229',
    '/jobs/hall/stickers.pdf?stock=roll-4x2',
    '/jobs/hall/papers.pdf?kind=cards',
    '/jobs/long/papers.pdf?kind=sheet',
    '/jobs/hall/papers.pdf?kind=cards&doors=A-2',
    '/jobs/hall/papers.pdf?kind=templates',
    '/jobs/hall/stickers.pdf?stock=none',
    '/jobs/hall/papers.pdf?kind=sheet&doors=B-1',
  ]) {
    const [mine, theirs] = await Promise.all(
      [own, other].map(async ({ hub }) => {
        const response = await fetch(`${hub.url}/api${path}`, { headers: { 'accept-language': 'de' } });
        const { status, headers } = response;
        return {
          told: [status, headers.get('content-type'), headers.get('x-stickers')],
          bytes: Buffer.from(await response.arrayBuffer()),
        };
      }),
    );
    expect(theirs?.told, path).toEqual(mine?.told);
    expect(mine !== undefined && theirs?.bytes.equals(mine.bytes), path).toBe(true);
  }
});

test('a large plan comes in pieces and is what its doors are, each by itself', async () => {
  const { ask, hub } = await liveHub({ worker: built.entry });
  await ask('POST', '/jobs', JOB(300));
  const { body, headers } = await ask('GET', '/jobs/hall');
  expect(headers.get('content-type')).toBe('application/json; charset=utf-8');
  const doors = body.doors as { door: string; parts: { code: string }[] }[];
  expect(doors).toHaveLength(300);
  expect((await ask('GET', '/jobs/hall/doors/A-300')).body).toEqual(doors[299]);
  const code = doors[299]?.parts[0]?.code ?? '';
  const spoiled = {
    id: '11111111-0000-4000-8000-000000000000',
    code,
    station: 'milling',
    stage: 'mill',
    mark: 'spoiled',
  };
  const marked = await ask('POST', '/marks', { ...spoiled, at: new Date().toISOString() });
  expect(marked.status).toBe(200);
  const now = (await ask('GET', '/jobs/hall')).body.doors as typeof doors;
  expect(now[299]?.parts[0]?.code).toBe(marked.body.replacement);
  expect(now.slice(0, 299)).toEqual(doors.slice(0, 299));
  expect(hub.store.replaced('hall')).toEqual({ [code]: marked.body.replacement });
});

/** What the desk needs to make something of a job of so many doors. */
async function sourceOf(quantity: number) {
  const { ask, hub } = await liveHub();
  await ask('POST', '/jobs', JOB(quantity));
  const stored = hub.store.jobs.get('hall');
  if (stored === undefined) throw new Error('the job is there');
  const { units, profile } = hub.store.shop.shop;
  return {
    source: { document: JSON.stringify(stored.document), last: null, replaced: {} },
    tools: { units, profile },
  };
}

test('while a large one is made, small ones pass; what nobody waits for any more ends at once, and the next is made', async () => {
  const { source, tools } = await sourceOf(2000);
  const desk = new WorkDesk(built.entry);
  // Those of earlier tests, and of the hub that saved the job, end when it suits them.
  const before = new Set(threads());
  const own = () => threads().filter((each) => !before.has(each)).length;
  const gone = new AbortController();
  const stickers = { kind: 'stickers', source, tools, stock: 'letter-3x10', from: 1 } as const;
  const ends: string[] = [];
  const large = desk.make(stickers, { doors: 2000, signal: gone.signal }).then(
    () => ends.push('made'),
    (error: unknown) => ends.push(error instanceof NotWanted ? 'given up' : String(error)),
  );
  const waiting = new AbortController();
  const second = desk.make(stickers, { doors: 2000, signal: waiting.signal }).then(
    () => ends.push('second made'),
    () => ends.push('second given up'),
  );
  const door = { kind: 'door', source, language: 'en', why: true, door: 'A-7', mark: 'A' } as const;
  const small = JSON.parse(
    await text(desk.stream(door, { doors: 2000, signal: new AbortController().signal })),
  ) as { door: string };
  expect(small.door).toBe('A-7');
  waiting.abort();
  await second;
  expect(ends).toEqual(['second given up']);
  expect(own()).toBeGreaterThan(0);
  gone.abort();
  await large;
  expect(ends).toEqual(['second given up', 'given up']);
  const sheet = await desk.make(
    { kind: 'papers', source, of: 'sheet', paper: 'a4', doors: ['A-1'] },
    { doors: 2000, signal: new AbortController().signal },
  );
  expect(sheet.ok && Buffer.from(sheet.pdf.subarray(0, 5)).toString()).toBe('%PDF-');
  await desk.close();
  await expect.poll(own, { timeout: 1000, interval: 20 }).toBe(0);
});

test('a plan that nobody reads on is not made on', async () => {
  const { source } = await sourceOf(2000);
  const desk = new WorkDesk(built.entry);
  const gone = new AbortController();
  const answer = desk.stream(
    { kind: 'plan', source, language: 'en', why: false },
    { doors: 2000, signal: gone.signal },
  );
  const first = await new Promise<Buffer>((read) => answer.once('data', read));
  answer.pause();
  expect(first.toString('utf8', 0, 20)).toContain('"format":1');
  await new Promise((later) => setTimeout(later, 500));
  // Four pieces of a quarter of a megabyte are ahead at most, of fourteen.
  expect(answer.readableLength).toBeLessThan(2 * 1024 * 1024);
  gone.abort();
  await expect(buffer(answer)).rejects.toThrow();
  await desk.close();
});

test('a page that is left and asks again is answered by the thread that it asked before', async () => {
  const { source } = await sourceOf(20);
  const desk = new WorkDesk(built.entry);
  const before = new Set(threads());
  const plan = { kind: 'plan', source, language: 'en', why: false } as const;
  const door = { kind: 'door', source, language: 'en', why: false, door: 'A-1', mark: 'A' } as const;
  const whole = () => text(desk.stream(plan, { doors: 20, signal: new AbortController().signal }));
  await text(desk.stream(door, { doors: 20, signal: new AbortController().signal }));
  const [thread] = threads().filter((each) => !before.has(each));
  if (thread === undefined) throw new Error('no thread was begun');
  for (let k = 0; k < 5; k += 1) {
    const gone = new AbortController();
    const left = buffer(desk.stream(plan, { doors: 20, signal: gone.signal })).catch(
      (error: unknown) => error,
    );
    await new Promise((later) => setTimeout(later, 3 * k));
    gone.abort();
    if (k === 0) expect(await left).toBeInstanceOf(NotWanted);
    await left;
    expect((JSON.parse(await whole()) as { doors: unknown[] }).doors).toHaveLength(20);
    expect(threads()).toContain(thread);
  }
  await desk.close();
});

test('what cannot be made fails alone; more than can wait is refused', async () => {
  const { source } = await sourceOf(2);
  const desk = new WorkDesk(built.entry);
  const signal = new AbortController().signal;
  const door = {
    kind: 'door',
    source: { ...source, document: '{}' },
    language: 'en',
    why: false,
    door: 'A-1',
    mark: 'A',
  } as const;
  await expect(desk.make(door, { doors: 2, signal })).rejects.toThrow(/expected/);
  const good = { ...door, source };
  const asked = Array.from({ length: 230 }, () =>
    desk.make(good, { doors: 2, signal: new AbortController().signal }),
  );
  const ends = await Promise.allSettled(asked);
  const refused = ends.flatMap((each) => (each.status === 'rejected' ? [each.reason as unknown] : []));
  expect(refused.length).toBe(29);
  for (const error of refused) expect(error).toBeInstanceOf(StoreBusy);
  await desk.close();
});

test('the hub’s own thread makes and holds no plan of more than 200 doors, whatever is asked of a large job', async () => {
  const live = await liveHub({ worker: built.entry });
  const { ask } = live;
  holdNoPlanOver(200);
  try {
    const planned = planDocument({ ...(await documentOf(live)), file: JOB(201) });
    throw new Error(`planned all the same: ${String(planned.ok)}`);
  } catch (error) {
    expect(String(error)).toMatch(/201 doors was made in the thread that answers marks/);
  }
  try {
    const saved = await ask('POST', '/jobs', JOB(230));
    expect(saved.status).toBe(201);
    const codes = (saved.body.parts as { code: string }[]).map(({ code }) => code);
    const code = codes[0] ?? '';
    const file = { ...JOB(230), defaults: { thickness: '7/8' } };
    const mark = { ...milled(code), id: '22222222-0000-4000-8000-000000000000' };
    for (const [method, path, body, status] of [
      ['GET', `/parts/${code}?station=milling`, undefined, 200],
      ['POST', '/marks', mark, 200],
      ['PUT', '/jobs/hall?dry=1', { revision: 1, file }, 200],
      ['PUT', '/jobs/hall', { revision: 1, file }, 200],
      ['PUT', '/jobs/hall/measured', { revision: 2, measured: { thickness: '27/32' } }, 200],
      ['POST', '/jobs/hall/revisions/1/restore', { revision: 3 }, 200],
      ['GET', '/jobs/hall', undefined, 200],
      ['GET', '/jobs/hall/doors', undefined, 200],
      ['GET', '/board', undefined, 200],
      ['GET', '/jobs', undefined, 200],
      ['GET', '/stickers', undefined, 200],
      ['POST', '/jobs/hall/printed', { codes: codes.slice(0, 9), stock: 'letter-3x10' }, 200],
      ['GET', '/jobs/hall/progress', undefined, 200],
      ['POST', '/backups', {}, 201],
      ['DELETE', '/jobs/hall', undefined, 204],
      ['GET', '/bin', undefined, 200],
      ['POST', '/bin/hall/restore', {}, 200],
    ] as const)
      expect((await ask(method, path, body)).status, `${method} ${path}`).toBe(status);
    const [backup] = (await ask('GET', '/backups')).body.backups as { name: string }[];
    expect((await ask('POST', `/backups/${String(backup?.name)}/restore`, {})).status).toBe(200);
    // Another version plans all of it anew; marks of a job that is not ready yet wait for it.
    await live.hub.stop();
    await live.start({ version: 'later' });
    expect((await ask('GET', `/parts/${code}?station=milling`)).status).toBe(200);
  } finally {
    holdNoPlanOver(Number.POSITIVE_INFINITY);
  }
});

/** A document of a small job, as the hub keeps it. */
async function documentOf({ ask, hub }: Awaited<ReturnType<typeof liveHub>>) {
  await ask('POST', '/jobs', JOB(1, 'small'));
  const stored = hub.store.jobs.get('small');
  if (stored === undefined) throw new Error('the job is there');
  return stored.document;
}

test('a job is saved even where who sent it is gone before it is planned', async () => {
  const { hub, ask } = await liveHub({ worker: built.entry });
  const gone = new AbortController();
  const sent = fetch(`${hub.url}/api/jobs`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(JOB(3000)),
    signal: gone.signal,
  }).catch(() => 'gone');
  // Long enough for the whole job to have arrived, not for 3 000 doors to be planned and written.
  await new Promise((passed) => setTimeout(passed, 60));
  gone.abort();
  expect(await sent).toBe('gone');
  await expect
    .poll(
      async () => ((await ask('GET', '/jobs')).body as { jobs: { id: string }[] }).jobs.map(({ id }) => id),
      { timeout: 30_000 },
    )
    .toContain('hall');
});
