import { spawn, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { buildIfStale } from '../../main/start/build-if-stale.mjs';
import { freshData, removeData } from '../e2e/hub-process.ts';

const traced = spawnSync('strace', ['-V']).status === 0;

test('in the system’s own calls a mark is written, flushed, and only then answered', async () => {
  if (!traced) {
    console.log('strace is not here: the order of the system’s calls is not shown on this machine');
    expect(traced).toBe(false);
    return;
  }
  const root = join(import.meta.dirname, '..', '..');
  expect(buildIfStale(root)).toBe(true);
  const data = freshData();
  const trace = join(data, 'trace');
  const child = spawn(
    'strace',
    [
      // Passes on the signal that ends it.
      '-I2',
      '-f',
      '-y',
      '-s',
      '400',
      '-e',
      'trace=write,pwrite64,writev,fdatasync,fsync',
      '-o',
      trace,
      process.execPath,
      join(root, 'dist', 'hub', 'main.js'),
    ],
    {
      env: { ...process.env, SHOULDERLINE_DATA: data, SHOULDERLINE_PORT: '0' },
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  );
  try {
    const url = await new Promise<string>((listening) => {
      child.stdout.on('data', (chunk: Buffer) => {
        const found = /LISTENING (\S+)/.exec(chunk.toString())?.[1];
        if (found !== undefined) listening(found);
      });
    });
    const post = (path: string, body: object) =>
      fetch(`${url}/api${path}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      });
    const job = {
      format: 1,
      id: 'a',
      job: 'A',
      units: 'in',
      doors: [{ mark: 'A', opening: { width: '16', height: '30' } }],
    };
    const saved = (await (await post('/jobs', job)).json()) as { parts: { code: string }[] };
    const id = '7d3a0c7e-1111-4222-8333-444455556666';
    const mark = {
      id,
      code: saved.parts[0]?.code,
      station: 'milling',
      stage: 'mill',
      mark: 'done',
      at: '2026-11-25T08:00:00Z',
    };
    expect((await post('/marks', mark)).status).toBe(200);
    const calls = readFileSync(trace, 'utf8').split('\n');
    const written = calls.findIndex((call) => call.includes('log.jsonl') && call.includes(id));
    const flushed = calls.findIndex(
      (call, k) => k > written && /f(?:data)?sync\(\d+<[^>]*log\.jsonl>/.test(call),
    );
    const answered = calls.findIndex((call, k) => k > written && /writev?\(.*HTTP\/1\.1 200/.test(call));
    const seen = [written, flushed, answered].map((at) =>
      (calls[at] ?? '').replace(/^\d+ /, '').slice(0, 60),
    );
    console.log(`strace: ${seen.join(' → ')}`);
    expect(written).toBeGreaterThan(0);
    expect(flushed).toBeGreaterThan(written);
    expect(answered).toBeGreaterThan(flushed);
  } finally {
    child.kill('SIGTERM');
    await new Promise((ended) => child.once('exit', ended));
    removeData(data);
  }
});
