import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { DeviceStore } from '#main/network/device-store.ts';
import { disk } from '#main/store/files/disk.ts';

test('a device that is paired while it is written down when another was seen stays paired, over a restart too', async () => {
  const data = mkdtempSync(join(tmpdir(), 'shoulderline-devices-'));
  onTestFinished(() => rmSync(data, { recursive: true, force: true }));
  let now = Date.now();
  const devices = await DeviceStore.open(disk, data, () => now);
  const saw = await devices.add('saw', 'milling');
  if (saw === null) throw new Error('not paired');
  expect(devices.find(saw.token)?.name).toBe('saw');
  now += 11 * 60_000;
  const adding = devices.add('tablet', 'bench');
  // The saw asks for something in this very moment.
  expect(devices.find(saw.token)?.name).toBe('saw');
  const tablet = await adding;
  if (tablet === null) throw new Error('not paired');
  expect(await devices.revoke('nobody')).toBe(false);
  expect(devices.find(tablet.token)?.name).toBe('tablet');
  await devices.close();
  const after = await DeviceStore.open(disk, data, () => now);
  expect(after.all.map(({ name }) => name)).toEqual(['saw', 'tablet']);
});
