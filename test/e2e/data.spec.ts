import { expect, test } from '@playwright/test';
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { freshData, removeData, startHubProcess } from './hub-process.ts';

const JOB = {
  format: 1,
  id: 'boot-room',
  job: 'Millbrook boot room',
  units: 'in',
  doors: [{ mark: 'LOCKER', opening: { width: '16', height: '30' } }],
};

function run(data: string, port: string, ...args: string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(import.meta.dirname, '..', '..', 'dist', 'hub', 'data.js'), ...args],
    { encoding: 'utf8', env: { ...process.env, SHOULDERLINE_DATA: data, SHOULDERLINE_PORT: port } },
  );
  return { status, stdout, stderr };
}

test('a shop’s data are backed up, exported, put back and taken in by one command each, with the hub running or not', async () => {
  const data = freshData();
  const other = freshData();
  const hub = await startHubProcess(data);
  const { port } = new URL(hub.url);
  const jobs = async (url: string) =>
    ((await (await fetch(`${url}/api/jobs`)).json()) as { jobs: unknown[] }).jobs.length;
  await fetch(`${hub.url}/api/jobs`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(JOB),
  });
  const backup = run(data, port, 'backup');
  expect(backup).toMatchObject({
    status: 0,
    stdout: expect.stringMatching(/^[\dTZ-]+\.json\.gz\n$/),
  });
  await fetch(`${hub.url}/api/jobs/boot-room`, { method: 'DELETE' });
  expect(await jobs(hub.url)).toBe(0);
  expect(run(data, port, 'restore', 'newest')).toMatchObject({ status: 0, stdout: backup.stdout });
  expect(await jobs(hub.url)).toBe(1);
  const file = join(data, 'out.json');
  expect(run(data, port, 'export', file)).toMatchObject({ status: 0 });
  expect(run(data, '1', 'backup')).toMatchObject({
    status: 1,
    stderr: expect.stringContaining('no hub answers'),
  });
  expect(await hub.end('SIGTERM')).toBe(0);

  expect((JSON.parse(readFileSync(file, 'utf8')) as unknown[]).length).toBeGreaterThan(4);
  expect(run(other, port, 'import', file)).toMatchObject({ status: 0 });
  expect(run(other, port, 'backup', '--list').stdout.trim().split('\n')).toHaveLength(1);
  const second = await startHubProcess(other);
  expect(await jobs(second.url)).toBe(1);
  await second.end('SIGTERM');
  writeFileSync(file, '[]');
  expect(run(other, port, 'import', file)).toMatchObject({
    status: 1,
    stderr: expect.stringContaining('no archive'),
  });
  expect(run(other, port, 'restore')).toMatchObject({ status: 2 });
  removeData(data);
  removeData(other);
});

test('every fault of a job file reaches a reader who is slow', () => {
  const data = freshData();
  const file = join(data, 'faults.json');
  const doors = Array.from({ length: 1500 }, (_, k) => ({
    mark: `D${k}`,
    opening: { width: '16', height: '30' },
    stile: { width: '8' },
  }));
  writeFileSync(file, JSON.stringify({ format: 1, job: 'x', units: 'in', doors }));
  const plan = join(import.meta.dirname, '..', '..', 'dist', 'hub', 'plan.js');
  const { stdout } = spawnSync(
    'sh',
    ['-c', '"$0" "$1" "$2" 2>&1 >/dev/null | (sleep 1; cat)', process.execPath, plan, file],
    { encoding: 'utf8' },
  );
  const lines = stdout.trim().split('\n');
  expect(lines.filter((line) => line.startsWith('doors['))).toHaveLength(lines.length);
  expect(new Set(lines.map((line) => line.slice(0, line.indexOf(']'))))).toHaveProperty('size', 1500);
  removeData(data);
});
