import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32, gunzipSync } from 'node:zlib';
import { beforeEach, expect, test } from 'vitest';
import { dataHere } from '#main/commands/data-here.ts';
import { writeOut } from '#main/commands/write-out.ts';
import { makeAuthority, makeLeaf } from '#main/network/certificates.ts';
import { disk } from '#main/store/files/disk.ts';
import { slices } from '#main/store/files/packed.ts';
import { liveHub } from '../hub/live-hub.ts';
import { freshFolder } from '../store/fresh-folder.ts';
import { askOver } from './ask-over.ts';
import { networkHub, type NetworkHub, nodeFingerprint } from './over-network.ts';

let old: NetworkHub;
let cookie = '';
beforeEach(async () => {
  old = await networkHub();
  cookie = (await old.pair('tablet at the saw')).cookie;
});

/** An archive as a hub gives it out at its own machine, with the keys or without. */
async function exported(live: NetworkHub, withKeys: boolean): Promise<string> {
  const { cookie: office = '' } = await live.office();
  const path = withKeys ? '/api/export/with-network-keys' : '/api/export';
  const answer = await fetch(`${live.hub.url}${path}`, { headers: { cookie: office } });
  expect(answer.status).toBe(200);
  return answer.text();
}

/** What only the network's documents hold: a piece of each of its keys, and the hash of each device. */
function secretsOf({ data, hub }: NetworkHub): string[] {
  const keys = readFileSync(join(data, 'network-keys.json'), 'utf8');
  const pieces = [...keys.matchAll(/BEGIN PRIVATE KEY-----\\n(.{40})/g)].map(([, piece = '']) => piece);
  expect(pieces).toHaveLength(2);
  return [...pieces, ...hub.network.devices.all.map(({ hash }) => hash)];
}

const heldIn = (text: string, secrets: readonly string[]) => secrets.filter((each) => text.includes(each));

/** The same archive with another text in its line of the network, sealed as if it had been so. */
function changed(archive: string, change: (network: string) => string): string {
  const lines = archive.split('\n').map((line) => (line.startsWith('{"network":') ? change(line) : line));
  const end = lines.findIndex((line) => line.startsWith('{"end":'));
  const sum = crc32(`${lines.slice(0, end).join('\n')}\n`);
  lines[end] = (lines[end] ?? '').replace(/"sum":\d+/, `"sum":${sum}`);
  return lines.join('\n');
}

test('the network’s keys and devices are in no backup and no export but in one that was asked for with them', async () => {
  const secrets = secretsOf(old);
  expect(secrets).toHaveLength(3);
  expect(heldIn(await exported(old, false), secrets)).toEqual([]);
  await old.ask('POST', '/backups', {}, await old.office());
  const backups = readdirSync(join(old.data, 'backups'));
  expect(backups).toHaveLength(1);
  for (const name of backups)
    expect(heldIn(gunzipSync(readFileSync(join(old.data, 'backups', name))).toString(), secrets)).toEqual([]);
  expect(heldIn(await exported(old, true), secrets)).toEqual(secrets);
  // An older version takes what it knows.
  expect(await exported(old, false)).toContain('{"archive":4,');
});

test('another hub that is given the archive answers with the same fingerprint, knows the old one’s devices, with what their pages send by, and no more its own', async () => {
  const sending = await old.over('POST', '/api/moved/token', { headers: { cookie }, body: {} });
  const origin = old.url;
  const archive = await exported(old, true);
  const next = await networkHub();
  const own = await next.pair('its own');
  const before = nodeFingerprint(next.authority);
  expect(before).not.toBe(nodeFingerprint(old.authority));
  const restored = await next.ask('POST', '/import', archive, await next.office());
  expect(restored).toMatchObject({ status: 200, body: { network: true } });
  expect(next.hub.network.state).toBe('on');
  expect(next.hub.network.fingerprint).toBe(nodeFingerprint(old.authority));
  expect((await next.ask('GET', '/network', undefined, await next.office())).body).toMatchObject({
    fingerprint: nodeFingerprint(old.authority),
    devices: [{ name: 'tablet at the saw' }],
  });
  // A device that trusts the old hub's authority and no other is let in by the cookie that it has.
  const board = (headers: Record<string, string>) =>
    askOver(next.url, old.authority, 'GET', '/api/board', { headers });
  expect((await board({ cookie })).status).toBe(200);
  expect((await board({ cookie: own.cookie })).status).toBe(401);
  const headers = { origin, authorization: `Bearer ${String(sending.body.token)}` };
  const leave = { headers, body: {} };
  expect((await askOver(next.url, old.authority, 'POST', '/api/moved/leave', leave)).status).toBe(201);
  await next.restart();
  expect((await board({ cookie })).status).toBe(200);
});

test('an archive without keys leaves those that are there, and the network open', async () => {
  const archive = await exported(old, false);
  const next = await networkHub();
  const own = await next.pair('its own');
  const { url, authority } = next;
  expect(await next.ask('POST', '/import', archive, await next.office())).toMatchObject({
    status: 200,
    body: { network: false },
  });
  expect([next.url, next.authority]).toEqual([url, authority]);
  expect((await next.over('GET', '/api/board', { headers: { cookie: own.cookie } })).status).toBe(200);
});

test('keys that are damaged, or do not belong together, are refused whole', async () => {
  const archive = await exported(old, true);
  const next = await networkHub();
  const own = await next.pair('its own');
  const other = await makeAuthority('other', Date.now());
  const leaf = await makeLeaf(other, ['127.0.0.2'], Date.now());
  const within = (change: (keys: Record<string, unknown>) => unknown) => (line: string) => {
    const { network } = JSON.parse(line.slice(0, -1)) as { network: { keys: Record<string, unknown> } };
    return `${JSON.stringify({ network: { ...network, keys: change(network.keys) } })},`;
  };
  const authorityOf = (keys: Record<string, unknown>) => keys.authority as Record<string, unknown>;
  const cases: [string, string, string][] = [
    [
      'a letter of a key',
      changed(archive, (line) => line.replace(/(PRIVATE KEY-----\\n.{20})./, '$1!')),
      'line',
    ],
    ['a bit, and the sum as it was', archive.replace('{"network":', '{"netwerk":'), 'line 4'],
    [
      'a key of another',
      changed(
        archive,
        within((keys) => ({ ...keys, authority: { ...authorityOf(keys), key: other.key } })),
      ),
      'belong',
    ],
    [
      'a hub’s certificate by another',
      changed(
        archive,
        within((keys) => ({ ...keys, leaf })),
      ),
      'not by',
    ],
    [
      'a leaf as the authority',
      changed(
        archive,
        within((keys) => ({ ...keys, authority: keys.leaf, leaf: null })),
      ),
      'no certificate of a shop',
    ],
    [
      'no authority',
      changed(
        archive,
        within((keys) => ({ ...keys, authority: null, leaf: null })),
      ),
      'no key',
    ],
    [
      'devices as nonsense',
      changed(archive, (line) => line.replace('"devices":{"format":1', '"devices":{"format":true')),
      'line 4',
    ],
    ['the network twice', changed(archive, (line) => `${line}\n${line}`), 'elsewhere'],
  ];
  const was = ['network-keys.json', 'devices.json'].map((name) =>
    readFileSync(join(next.data, name), 'utf8'),
  );
  for (const [what, text, why] of cases) {
    const { status, body } = await next.ask('POST', '/import', text, await next.office());
    expect([status, body.code], what).toEqual([400, 'archive']);
    expect(body.message, what).toContain(why);
  }
  expect(
    ['network-keys.json', 'devices.json'].map((name) => readFileSync(join(next.data, name), 'utf8')),
  ).toEqual(was);
  expect((await next.over('GET', '/api/board', { headers: { cookie: own.cookie } })).status).toBe(200);
});

test('over the network keys are neither given out nor put in place, whatever PIN is given', async () => {
  const archive = await exported(old, true);
  const session = await old.over('POST', '/api/session', { headers: { cookie }, body: { pin: '2468' } });
  const both = `${cookie}; ${String(session.headers['set-cookie']).replace(/;.*/, '')}`;
  const headers = { cookie: both };
  expect((await old.over('GET', '/api/export', { headers })).status).toBe(200);
  expect(await old.over('GET', '/api/export/with-network-keys', { headers })).toMatchObject({
    status: 403,
    body: { code: 'only-here' },
  });
  const put = await old.over('POST', '/api/import', { headers, body: archive });
  expect(put).toMatchObject({ status: 400, body: { code: 'archive' } });
  expect(put.body.message).toContain('at the shop computer itself');
});

test('a file with the keys is for its owner alone, whatever stood there, and a folder that no hub holds takes it', async () => {
  await old.hub.stop();
  const [from, folder] = [await dataHere(old.data, 'test'), freshFolder()];
  const file = join(folder, 'all.json');
  writeFileSync(file, 'open to everybody', { mode: 0o644 });
  if (from === null) throw new Error('the folder is held');
  await writeOut(from, file, true);
  await from.close();
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(readdirSync(folder)).toEqual(['all.json']);
  const into = await dataHere(join(folder, 'next'), 'test');
  expect(await into?.take('all.json', slices(disk, file))).toMatchObject({ network: true });
  await into?.close();
  for (const name of ['network-keys.json', 'devices.json']) {
    const path = join(folder, 'next', name);
    expect(statSync(path).mode & 0o777).toBe(0o600);
    expect(readFileSync(path, 'utf8')).toBe(readFileSync(join(old.data, name), 'utf8'));
  }
  await old.start();
});

test('a hub whose network was never on has no keys to give', async () => {
  const { ask } = await liveHub();
  expect(await ask('GET', '/export/with-network-keys')).toMatchObject({
    status: 409,
    body: { code: 'no-network-keys' },
  });
});
