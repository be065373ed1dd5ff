import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import { expect, onTestFinished, test } from 'vitest';
import { type Hub, startHub } from '#main/hub/hub.ts';
import { milled, SMALL_JOB } from '../main/store/small-shop.ts';

function mount(...args: string[]): void {
  const { status, stderr } = spawnSync('mount', args);
  expect(status, `mount is not allowed here, real disks are not shown: ${stderr.toString()}`).toBe(0);
}

async function hubOn(data: string) {
  const hub: Hub = await startHub({
    data,
    port: 0,
    host: '127.0.0.1',
    demo: false,
    version: 'proof',
    logger: pino({ level: 'silent' }),
  });
  return {
    hub,
    async ask(method: string, path: string, body?: unknown) {
      const response = await fetch(`${hub.url}/api${path}`, {
        method,
        ...(body === undefined
          ? {}
          : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
      });
      const json = response.headers.get('content-type')?.startsWith('application/json') === true;
      const bytes = await response.arrayBuffer();
      const read: unknown = json ? JSON.parse(Buffer.from(bytes).toString('utf8')) : null;
      return { status: response.status, body: read as Record<string, unknown> };
    },
  };
}

/** A small disk of its own with a hub's folder, a job and marks on it; the hub was stopped. */
async function smallDisk() {
  const disk = mkdtempSync(join(tmpdir(), 'shoulderline-disk-'));
  mount('-t', 'tmpfs', '-o', 'size=4m', 'tmpfs', disk);
  onTestFinished(() => {
    spawnSync('umount', [disk]);
    rmSync(disk, { recursive: true, force: true });
  });
  const data = join(disk, 'data');
  const live = await hubOn(data);
  const saved = await live.ask('POST', '/jobs', SMALL_JOB);
  const codes = (saved.body.parts as { code: string }[]).map(({ code }) => code);
  for (const code of codes.slice(0, 3))
    expect((await live.ask('POST', '/marks', milled(code))).status).toBe(200);
  const board = (await live.ask('GET', '/board')).body;
  await live.hub.stop();
  return { disk, data, codes, board };
}

test.each([
  [
    'full',
    'ENOSPC',
    (disk: string) => {
      // To the last byte: whole pages, and then what is left.
      for (const bytes of [1 << 20, 4096, 1])
        for (let k = 0; ; k += 1)
          try {
            writeFileSync(join(disk, `filler-${bytes}-${k}`), Buffer.alloc(bytes));
          } catch {
            break;
          }
    },
    (disk: string) => spawnSync('sh', ['-c', `rm -f ${disk}/filler-*`]),
  ],
  [
    'mounted to be read',
    'EROFS',
    (disk: string) => mount('-o', 'remount,ro', disk),
    (disk: string) => mount('-o', 'remount,rw', disk),
  ],
] as const)(
  'on a disk that is %s a hub starts, shows set-ups, board and papers, and says that nothing can be marked',
  async (_what, code, spoil, mend) => {
    const { disk, data, codes, board } = await smallDisk();
    spoil(disk);
    const live = await hubOn(data);
    try {
      const health = (await live.ask('GET', '/health')).body;
      expect(health).toMatchObject({ ok: false, troubles: [{ code: 'cannot-write' }] });
      expect(JSON.stringify(health.troubles)).toContain(code);
      expect((await live.ask('GET', '/board')).body).toEqual(board);
      expect((await live.ask('GET', `/parts/${codes[4] ?? ''}?station=milling`)).status).toBe(200);
      expect((await live.ask('GET', '/jobs/boot-room/papers.pdf?kind=sheet&paper=a4')).status).toBe(200);
      expect((await live.ask('GET', '/jobs/boot-room/stickers.pdf?stock=roll-2x1')).status).toBe(200);
      expect((await live.ask('POST', '/marks', milled(codes[4] ?? ''))).status).toBe(507);
    } finally {
      await live.hub.stop();
    }
    mend(disk);
    const again = await hubOn(data);
    expect((await again.ask('GET', '/health')).body).toMatchObject({ ok: true, troubles: [] });
    expect((await again.ask('POST', '/marks', milled(codes[4] ?? ''))).status).toBe(200);
    await again.hub.stop();
  },
);
