import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { DeviceWays, MOST_WAYS } from '#main/network/device-ways.ts';
import { disk } from '#main/store/files/disk.ts';

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'shoulderline-ways-'));
  onTestFinished(() => rmSync(made, { recursive: true, force: true }));
  return made;
}

test('a device is known at the last four of its addresses, each by what was given to it there', async () => {
  const at = folder();
  const ways = await DeviceWays.open(disk, at, () => true);
  const origins = Array.from({ length: MOST_WAYS + 1 }, (_, k) => `https://10.0.0.${k}:7518`);
  const given: { readonly origin: string; readonly sending: string; readonly cookie: string }[] = [];
  for (const origin of origins)
    given.push({
      origin,
      sending: await ways.newSending('saw', origin),
      cookie: await ways.newCookie('saw', origin),
    });
  const again = await DeviceWays.open(disk, at, () => true);
  for (const known of [ways, again])
    expect(
      given.map(({ origin, sending, cookie }) => [
        known.knows(origin),
        known.bySending(sending, origin),
        known.byCookie(cookie),
      ]),
    ).toEqual([[false, null, null], ...Array.from({ length: MOST_WAYS }, () => [true, 'saw', 'saw'])]);
  const [, second, third] = given;
  expect(again.bySending(second?.sending ?? '', third?.origin ?? '')).toBeNull();
  // A new one ends the one before it.
  await again.newSending('saw', second?.origin ?? '');
  expect(again.bySending(second?.sending ?? '', second?.origin ?? '')).toBeNull();
  expect(again.byCookie(second?.cookie ?? '')).toBe('saw');
});

test('a device that is paired no more is told by nothing; where its page was is still known', async () => {
  let paired = true;
  const ways = await DeviceWays.open(disk, folder(), () => paired);
  const at = 'https://10.0.0.1:7518';
  const [sending, cookie] = [await ways.newSending('saw', at), await ways.newCookie('saw', at)];
  const told = () => [ways.bySending(sending, at), ways.byCookie(cookie), ways.knows(at)];
  expect(told()).toEqual(['saw', 'saw', true]);
  expect(ways.proof('saw', at, 'nonce', 'there')).not.toBeNull();
  paired = false;
  expect(told()).toEqual([null, null, true]);
  expect(ways.proof('saw', at, 'nonce', 'there')).toBeNull();
});

test('a list that cannot be read is kept aside, and one of a newer version is left as it is', async () => {
  const at = folder();
  writeFileSync(join(at, 'device-ways.json'), 'torn');
  const ways = await DeviceWays.open(disk, at, () => true);
  expect(ways.trouble).not.toBeNull();
  expect(ways.knows('https://10.0.0.1:7518')).toBe(false);
  expect(readdirSync(at).length).toBeGreaterThan(0);
  writeFileSync(join(at, 'device-ways.json'), '{"format":99,"devices":[]}');
  await expect(DeviceWays.open(disk, at, () => true)).rejects.toThrow('the ways of devices');
});
