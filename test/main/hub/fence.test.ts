import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import pino from 'pino';
import { expect, onTestFinished, test } from 'vitest';
import { type Hub, type HubOptions, startHub } from '#main/hub/hub.ts';
import { disk } from '#main/store/files/disk.ts';
import type { FilePort } from '#main/store/files/file-port.ts';
import type { Beat } from '#main/store/files/judge-lock.ts';
import { type ProcessTable, systemProcesses } from '#main/store/files/process-table.ts';
import { readLine } from '#main/store/log/log-line.ts';
import { freshFolder } from '../store/fresh-folder.ts';
import { milled, SMALL_JOB } from '../store/small-shop.ts';

const QUICK: Beat = { everyMs: 20, lookMs: 10, stillMs: 150 };
/** A heart that does not beat while the test runs, as of a process that was stopped. */
const STOPPED: Beat = { ...QUICK, everyMs: 1_000_000 };
const OTHER_BOOT: ProcessTable = { ...systemProcesses, boot: 'another boot' };
const OTHER_SPACE: ProcessTable = { ...systemProcesses, space: 'pid:[4711]' };

interface Asked {
  readonly status: number;
  readonly body: Record<string, unknown>;
}

async function hubOn(data: string, options: Partial<HubOptions>) {
  const hub = await startHub({
    data,
    port: 0,
    host: '127.0.0.1',
    demo: false,
    version: 'test',
    logger: pino({ level: 'silent' }),
    ...options,
  });
  onTestFinished(() => hub.stop());
  return { hub, ask: (method: string, path: string, body?: unknown) => ask(hub, method, path, body) };
}

async function ask({ url }: Hub, method: string, path: string, body?: unknown): Promise<Asked> {
  const response = await fetch(`${url}/api${path}`, {
    method,
    ...(body === undefined
      ? {}
      : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
  });
  return { status: response.status, body: (await response.json()) as Record<string, unknown> };
}

function codesOf(saved: Asked): string[] {
  return (saved.body.parts as { code: string }[]).map(({ code }) => code);
}

async function marksOf({ store }: Hub): Promise<string[]> {
  const ids: string[] = [];
  for await (const { mark } of store.since(0)) ids.push(mark.id);
  return ids;
}

/** The disk, with the log's flushes held back for as long as `hold` says. */
function slowFlush(): FilePort & { hold: Promise<void> } {
  const port = {
    ...disk,
    hold: Promise.resolve(),
    async grow(path: string) {
      const file = await disk.grow(path);
      if (!path.endsWith('log.jsonl')) return file;
      const flush = () => port.hold.then(() => file.flush());
      return { ...file, flush };
    },
  };
  return port;
}

test.each([
  ['of another boot', OTHER_BOOT],
  ['in another namespace', OTHER_SPACE],
])(
  'a hub %s does not start while the heart beats; when it stands still it takes over, and only it answers',
  async (_where, table) => {
    const data = freshFolder();
    const first = await hubOn(data, { hold: { beat: QUICK } });
    await expect(hubOn(data, { hold: { table, beat: QUICK } })).rejects.toThrow(/is in use by process/);
    await first.hub.stop();

    const stopped = await hubOn(data, { hold: { beat: STOPPED } });
    const codes = codesOf(await stopped.ask('POST', '/jobs', SMALL_JOB));
    const marks = codes.slice(0, 3).map((code) => milled(code));
    for (const mark of marks) expect((await stopped.ask('POST', '/marks', mark)).status).toBe(200);

    const second = await hubOn(data, { hold: { table, beat: QUICK } });
    const late = milled(codes[3] ?? '');
    const refused = await stopped.ask('POST', '/marks', late);
    expect([refused.status, refused.body.code]).toEqual([507, 'taken-over']);
    expect(refused.body.message).toContain(`process ${process.pid}`);
    expect((await stopped.ask('GET', '/health')).status).toBe(507);
    expect(await stopped.hub.lost).toContain('has taken the data folder over');
    expect(await marksOf(second.hub)).toEqual(marks.map(({ id }) => id));
    expect((await second.ask('POST', '/marks', late)).status).toBe(200);
  },
);

test('a mark that was on its way while another took over is not answered, and tears none of the other’s', async () => {
  const data = freshFolder();
  const files = slowFlush();
  const first = await hubOn(data, { files, hold: { beat: STOPPED } });
  const codes = codesOf(await first.ask('POST', '/jobs', SMALL_JOB));
  const before = milled(codes[0] ?? '');
  expect((await first.ask('POST', '/marks', before)).status).toBe(200);
  let go: () => void = () => undefined;
  files.hold = new Promise((done) => (go = done));
  const onItsWay = first.ask('POST', '/marks', milled(codes[1] ?? ''));
  const second = await hubOn(data, { hold: { table: OTHER_BOOT, beat: QUICK } });
  const own = milled(codes[2] ?? '');
  expect((await second.ask('POST', '/marks', own)).status).toBe(200);
  go();
  expect((await onItsWay).status).toBe(507);
  // It tries to open and mend its log once more, and must not cut the other's.
  expect((await first.ask('POST', '/marks', milled(codes[3] ?? ''))).status).toBe(507);
  const after = milled(codes[4] ?? '');
  expect((await second.ask('POST', '/marks', after)).status).toBe(200);
  const ids = await marksOf(second.hub);
  expect(ids).toEqual(expect.arrayContaining([before.id, own.id, after.id]));
  expect(new Set(ids).size).toBe(ids.length);
  const lines = readFileSync(join(data, 'log.jsonl')).toString('utf8').split('\n').slice(0, -1);
  const numbers = lines.map((line) => readLine(Buffer.from(line))?.seq);
  expect(numbers).toEqual(lines.map((_, k) => k + 1));
});

test('with its lock removed a hub answers no mark and stops; the next one has every answered mark', async () => {
  const data = freshFolder();
  const first = await hubOn(data, { hold: { beat: STOPPED } });
  const codes = codesOf(await first.ask('POST', '/jobs', SMALL_JOB));
  const mark = milled(codes[0] ?? '');
  expect((await first.ask('POST', '/marks', mark)).status).toBe(200);
  for (const name of readdirSync(data)) if (name.startsWith('lock-')) rmSync(join(data, name));
  const second = await hubOn(data, { hold: { beat: QUICK } });
  const late = await first.ask('POST', '/marks', milled(codes[1] ?? ''));
  expect([late.status, late.body.code]).toEqual([507, 'taken-over']);
  expect((await second.ask('POST', '/marks', milled(codes[2] ?? ''))).status).toBe(200);
  expect(await marksOf(second.hub)).toContain(mark.id);
});

test('with its lock removed and nobody else there, a hub says that and stops by itself', async () => {
  const data = freshFolder();
  const { hub, ask: asked } = await hubOn(data, { hold: { beat: QUICK } });
  for (const name of readdirSync(data)) if (name.startsWith('lock-')) rmSync(join(data, name));
  expect(await hub.lost).toContain('was taken away while it ran');
  const told = await asked('GET', '/jobs');
  expect([told.status, told.body.code]).toEqual([507, 'lock-gone']);
});

test('a document on its way while another took over does not replace the other’s', async () => {
  const data = freshFolder();
  let go: () => void = () => undefined;
  let hold = Promise.resolve();
  const files: FilePort = {
    ...disk,
    // Held back between the look at the lock and the step that it allows.
    rename: (from, to) =>
      (to.endsWith('shop.json') ? hold : Promise.resolve()).then(() => disk.rename(from, to)),
  };
  const first = await hubOn(data, { files, hold: { beat: STOPPED } });
  const { revision, ...shop } = (await first.ask('GET', '/shop')).body;
  hold = new Promise((done) => (go = done));
  const onItsWay = first.ask('PUT', '/shop', { revision, shop: { ...shop, name: 'Late' } });
  await new Promise((over) => setTimeout(over, 100));
  const second = await hubOn(data, { hold: { table: OTHER_BOOT, beat: QUICK } });
  const saved = await second.ask('PUT', '/shop', { revision, shop });
  expect(saved.status).toBe(200);
  const lies = readFileSync(join(data, 'shop.json'), 'utf8');
  go();
  expect((await onItsWay).status).toBe(507);
  expect(readFileSync(join(data, 'shop.json'), 'utf8')).toBe(lies);
});
