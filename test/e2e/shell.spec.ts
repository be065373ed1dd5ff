import { expect, test } from '@playwright/test';
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { freshData, removeData } from './hub-process.ts';

test('the built shell, run under a stand-in that is ready late, starts the hub and shows its screens full screen', async () => {
  const data = freshData();
  const root = join(import.meta.dirname, '..', '..');
  const child = spawn(
    process.execPath,
    ['--import', join(import.meta.dirname, 'electron-stand-in.mjs'), join(root, 'dist', 'shell', 'main.js')],
    {
      env: { ...process.env, SHOULDERLINE_DATA: data, SHOULDERLINE_PORT: '0' },
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  );
  let said = '';
  child.stdout.on('data', (chunk: Buffer) => (said += chunk.toString()));
  const code = await new Promise((ended) => child.once('exit', ended));
  removeData(data);
  expect(said).toMatch(/STAND-IN window \{"kiosk":true/);
  expect(said).toContain('"sandbox":true,"contextIsolation":true,"nodeIntegration":false');
  expect(said).toContain('STAND-IN permission-request');
  expect(said).toContain('STAND-IN window-open-handler');
  expect(said).toMatch(/STAND-IN loaded http:\/\/127\.0\.0\.1:\d+ 200/);
  expect(code).toBe(0);
});
