import { connect, type Socket } from 'node:net';
import { expect, onTestFinished, test } from 'vitest';
import { milled, SMALL_JOB } from '../store/small-shop.ts';
import { liveHub } from './live-hub.ts';

/** A connection that has said this much and then says nothing and, while it is paused, reads nothing. */
function begun(url: string, text: string): Socket {
  const { hostname, port } = new URL(url);
  const socket = connect(Number(port), hostname);
  socket.on('error', () => undefined);
  socket.pause();
  onTestFinished(() => void socket.destroy());
  socket.write(text.replaceAll('\n', '\r\n').replace('HOST', `127.0.0.1:${port}`));
  return socket;
}

test('an import that stands still keeps no mark and no job from being taken', async () => {
  const { ask, hub } = await liveHub();
  const saved = await ask('POST', '/jobs', SMALL_JOB);
  const code = (saved.body.parts as { code: string }[])[0]?.code ?? '';
  begun(
    hub.url,
    'POST /api/import HTTP/1.1\nHost: HOST\nContent-Type: application/json\nContent-Length: 90000\n\n[',
  );
  await expect.poll(async () => (await ask('POST', '/import', '[')).status, { interval: 10 }).toBe(503);
  expect((await ask('POST', '/marks', milled(code))).status).toBe(200);
  expect((await ask('PUT', '/jobs/boot-room', { revision: 1, file: SMALL_JOB })).status).toBe(200);
  expect((await ask('GET', '/backups')).body).toEqual({ backups: [] });
});

test('refused imports make no backups, so that none of the good ones is pushed out', async () => {
  const { ask } = await liveHub();
  const good = (await ask('POST', '/backups', {})).body.name;
  for (let k = 0; k < 5; k += 1) expect((await ask('POST', '/import', 'nonsense')).status).toBe(400);
  const { backups } = (await ask('GET', '/backups')).body as { backups: { name: string }[] };
  expect(backups.map(({ name }) => name)).toEqual([good]);
});

test('an export that was begun before other data were put in place is broken off, not ended', async () => {
  const { ask, hub } = await liveHub();
  const saved = await ask('POST', '/jobs', SMALL_JOB);
  const { name } = (await ask('POST', '/backups', {})).body;
  const codes = (saved.body.parts as { code: string }[]).map(({ code }) => code);
  const reason = 'x'.repeat(200);
  const marks = Array.from({ length: 16_000 }, (_, k) =>
    milled(codes[k % codes.length] ?? '', { mark: 'proved', reason }),
  );
  await Promise.all(marks.map((mark) => hub.store.mark(mark)));
  const export_ = begun(hub.url, 'GET /api/export HTTP/1.1\nHost: HOST\nConnection: close\n\n');
  await new Promise((later) => setTimeout(later, 300));
  expect((await ask('POST', `/backups/${String(name)}/restore`, {})).status).toBe(200);
  let text = '';
  export_.on('data', (bytes) => (text += bytes.toString('latin1')));
  export_.resume();
  await new Promise((closed) => export_.on('close', closed));
  expect(text).toContain('200 OK');
  expect(text.endsWith('0\r\n\r\n')).toBe(false);
  expect(text).not.toContain('{"end"');
  expect((await ask('GET', '/export')).status).toBe(200);
}, 30_000);
