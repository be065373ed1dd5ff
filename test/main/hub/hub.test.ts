import { readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { type LiveHub, liveHub, rawStatus } from './live-hub.ts';

let live: LiveHub;
beforeEach(async () => {
  live = await liveHub();
});

const JOB = {
  format: 1,
  job: 'Sail loft',
  units: 'in',
  doors: [{ mark: 'A', quantity: 2, opening: { width: '16', height: '30' } }],
};

const ask: LiveHub['ask'] = (...asked) => live.ask(...asked);

let count = 0;
const uuid = () => `00000000-0000-4000-8000-${String((count += 1)).padStart(12, '0')}`;
const mark = (code: string, station: string, stage: string, more: object = {}) => ({
  id: uuid(),
  code,
  station,
  stage,
  mark: 'done',
  at: '2026-11-25T08:00:00.000Z',
  ...more,
});

async function saved(): Promise<{ id: string; code: (door: string, part: string) => string }> {
  const { status, body } = await ask('POST', '/jobs', JOB);
  expect(status).toBe(201);
  const parts = body.parts as { code: string; door: string; part: string }[];
  return {
    id: String(body.id),
    code: (door, part) => parts.find((each) => each.door === door && each.part === part)?.code ?? '',
  };
}

test('a saved job gives its plan, with reasons on request', async () => {
  const { id } = await saved();
  const plan = await ask('GET', `/jobs/${encodeURIComponent(id)}`);
  expect(plan.body).toMatchObject({ format: 1, job: 'Sail loft', units: 'in' });
  expect(JSON.stringify(plan.body)).not.toContain('"why"');
  expect(JSON.stringify((await ask('GET', `/jobs/${encodeURIComponent(id)}?why=1`)).body)).toContain('"why"');
});

test('a job whose codes exist already gets a fresh id and says so', async () => {
  const first = await saved();
  const second = await ask('POST', '/jobs', JOB);
  expect(second.body.codesChanged).toBe(true);
  expect(second.body.id).not.toBe(first.id);
});

test('faults come as a list with path, code and message', async () => {
  const told = await ask('POST', '/jobs', {
    ...JOB,
    doors: [{ mark: 'A', opening: { width: '-1', height: '30' } }],
  });
  expect(told.status).toBe(400);
  expect(told.body.errors).toEqual([
    expect.objectContaining({ path: 'doors[0].opening.width', code: 'negative' }),
  ]);
});

test('a stale revision is refused, and codes stay when a job is changed', async () => {
  const { id, code } = await saved();
  const file = { ...JOB, doors: [{ mark: 'A', quantity: 2, opening: { width: '17', height: '30' } }] };
  const told = await ask('PUT', `/jobs/${encodeURIComponent(id)}`, { revision: 1, file });
  expect(told.status).toBe(200);
  expect(told.body.parts).toContainEqual({ code: code('A-1', 'panel'), door: 'A-1', part: 'panel' });
  expect((await ask('PUT', `/jobs/${encodeURIComponent(id)}`, { revision: 1, file })).status).toBe(409);
});

test.each([
  'Hall cupboard',
  'Küche über Straße',
  'Hall/Kitchen?',
  '100 % ash #2',
  'Ünsere längste Überschrift für alle Türen im großen Flur Ä/1',
])('a job named “%s” is changed and saved again and again, and keeps its codes', async (name) => {
  const first = await ask('POST', '/jobs', { ...JOB, job: name });
  const address = `/jobs/${encodeURIComponent(String(first.body.id))}`;
  for (const [revision, width] of [
    [1, '17'],
    [2, '18 1/2'],
  ] as const) {
    const { body: held } = await ask('GET', `${address}/file`);
    const file = {
      ...(held.file as typeof JOB),
      doors: [{ ...JOB.doors[0], opening: { width, height: '30' } }],
    };
    const told = await ask('PUT', address, { revision, file });
    expect(told.body).toMatchObject({ revision: revision + 1, parts: first.body.parts });
  }
});

test('a part answers with its next stage, and with its setup only where that is done', async () => {
  const { code } = await saved();
  const stile = code('A-1', 'stile-left');
  const at = async (station: string) => (await ask('GET', `/parts/${stile}?station=${station}`)).body;
  expect(await at('milling')).toMatchObject({
    here: { stage: 'mill', settings: { length: '31' } },
    next: { stage: 'mill', station: 'milling' },
    door: 'A-1',
  });
  expect(await at('mortiser')).toMatchObject({ here: null, next: { stage: 'mill' } });
});

test('the same mark again answers the same; its id with another content is refused', async () => {
  const { code } = await saved();
  const done = mark(code('A-1', 'stile-left'), 'milling', 'mill');
  const first = await ask('POST', '/marks', done);
  expect(first.status).toBe(200);
  await ask('POST', '/marks', mark(done.code, 'router-table', 'bead'));
  expect(await ask('POST', '/marks', done)).toEqual(first);
  expect((await ask('POST', '/marks', { ...done, stage: 'bead' })).body.code).toBe('id-reused');
});

test.each([
  ['wrong-station', 409, 'bench', 'mill'],
  ['stage-not-reached', 409, 'mortiser', 'mortise'],
  ['malformed', 400, 'milling', 'no-such-stage'],
])('%s is told with %i', async (refusal, status, station, stage) => {
  const { code } = await saved();
  const told = await ask('POST', '/marks', mark(code('A-1', 'stile-left'), station, stage));
  expect([told.status, told.body.code]).toEqual([status, refusal]);
});

test('a spoiled part gets a replacement with its own code, and the old sticker says so', async () => {
  const { code } = await saved();
  const old = code('A-1', 'rail-top');
  const told = await ask('POST', '/marks', mark(old, 'milling', 'mill', { mark: 'spoiled', reason: 'knot' }));
  expect(told.status).toBe(200);
  const fresh = String(told.body.replacement);
  expect((await ask('GET', `/parts/${old}`)).body.replacedBy).toBe(fresh);
  expect((await ask('POST', '/marks', mark(old, 'milling', 'mill'))).body.code).toBe('spoiled');
  expect((await ask('POST', '/marks', mark(fresh, 'milling', 'mill'))).status).toBe(200);
});

test('bad codes are told apart: no code, a wrong character, an unknown part', async () => {
  await saved();
  expect((await ask('GET', '/parts/hello')).status).toBe(400);
  expect((await ask('GET', '/parts/AAAAAAAAAA')).body.code).toBe('bad-check');
  expect((await ask('GET', '/parts/803AX3UERH')).status).toBe(404);
});

test('what was answered is there after a stop and after a torn last line', async () => {
  const { code } = await saved();
  await ask('POST', '/marks', mark(code('A-1', 'stile-left'), 'milling', 'mill'));
  await ask('POST', '/marks', mark(code('A-1', 'stile-right'), 'milling', 'mill'));
  await live.hub.stop();
  const log = join(live.data, 'log.jsonl');
  const whole = readFileSync(log);
  // Cut by its end alone, the last line is still whole.
  for (const [cut, done] of [
    [1, 2],
    [2, 1],
    [20, 1],
    [100, 1],
  ] as const) {
    truncateSync(log, whole.length - cut);
    await live.start();
    const row = ((await ask('GET', '/board')).body.doors as { done: number }[])[0];
    expect(row?.done).toBe(done);
    await live.hub.stop();
    writeFileSync(log, whole);
  }
  await live.start();
  expect(((await ask('GET', '/board')).body.doors as { done: number }[])[0]?.done).toBe(2);
});

test('a second hub on the same folder is refused', async () => {
  await expect(live.start()).rejects.toThrow(/in use by process/);
  await live.hub.stop();
  writeFileSync(
    join(live.data, 'lock-1.json'),
    JSON.stringify({
      pid: process.ppid,
      started: startOf(process.ppid),
      boot: readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim(),
    }),
  );
  await expect(live.start()).rejects.toThrow(/in use by process/);
  rmSync(join(live.data, 'lock-1.json'));
  await live.start();
});

function startOf(pid: number): string {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
  return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? '';
}

test('the border: foreign host 421, foreign origin 403, no JSON 415, too large 413, broken JSON 400', async () => {
  expect(await rawStatus(live.hub.url, '/api/health', { host: 'example.org' })).toBe(421);
  expect(await rawStatus(live.hub.url, '/api/health', { origin: 'http://example.org' })).toBe(403);
  expect((await ask('POST', '/marks', 'x', { 'content-type': 'text/plain' })).status).toBe(415);
  expect((await ask('POST', '/marks', JSON.stringify({ a: 'x'.repeat(20_000) }))).status).toBe(413);
  expect((await ask('POST', '/marks', '{"a":')).status).toBe(400);
  expect((await ask('GET', '/nowhere')).status).toBe(404);
});

test('events tell of marks with their number, and begin where the listener left off', async () => {
  const { code } = await saved();
  await ask('POST', '/marks', mark(code('A-1', 'stile-left'), 'milling', 'mill'));
  await ask('POST', '/marks', mark(code('A-1', 'stile-right'), 'milling', 'mill'));
  const response = await fetch(`${live.hub.url}/api/events`, { headers: { 'last-event-id': '2' } });
  const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader();
  let text = '';
  while (reader !== undefined && !text.includes('event: mark')) text += (await reader.read()).value ?? '';
  expect(text).toMatch(/id: 3\nevent: mark\n/);
  expect(text).not.toMatch(/id: 2\n/);
  await reader?.cancel();
});
