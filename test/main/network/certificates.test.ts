import { execFileSync, spawnSync } from 'node:child_process';
import { X509Certificate } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import {
  type CertifiedKey,
  fingerprintOf,
  LEAF_DAYS,
  makeAuthority,
  makeLeaf,
} from '#main/network/certificates.ts';
import { KeptKeys } from '#main/network/kept-keys.ts';
import { localName, ownAddresses } from '#main/network/own-addresses.ts';
import { disk } from '#main/store/files/disk.ts';

const DAY_MS = 86_400_000;
const openssl = spawnSync('openssl', ['version']).status === 0;

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'shoulderline-keys-'));
  onTestFinished(() => rmSync(made, { recursive: true, force: true }));
  return made;
}

/** What openssl says of a certificate by this authority, for a host or an address. */
function verified(authority: CertifiedKey, leaf: CertifiedKey, asked: readonly string[] = []): string {
  const at = folder();
  writeFileSync(join(at, 'authority.pem'), authority.certificate);
  writeFileSync(join(at, 'leaf.pem'), leaf.certificate);
  const files = ['-CAfile', join(at, 'authority.pem'), '-purpose', 'sslserver', join(at, 'leaf.pem')];
  const ran = spawnSync('openssl', ['verify', '-x509_strict', ...asked, ...files], { encoding: 'utf8' });
  return ran.status === 0 ? 'OK' : ran.stderr;
}

test.skipIf(!openssl)(
  'openssl takes a certificate of the shop for private addresses and .local, and refuses every other name by the same authority',
  { timeout: 60_000 },
  async () => {
    const now = Date.now();
    const authority = await makeAuthority('bench-pc', now);
    const good = await makeLeaf(
      authority,
      ['192.168.1.20', '10.1.2.3', '172.31.0.9', '127.0.0.2', 'bench-pc.local'],
      now,
    );
    expect(verified(authority, good)).toBe('OK');
    expect(verified(authority, good, ['-verify_ip', '192.168.1.20'])).toBe('OK');
    expect(verified(authority, good, ['-verify_hostname', 'bench-pc.local'])).toBe('OK');
    expect(verified(authority, good, ['-verify_ip', '192.168.1.21'])).toContain('IP address mismatch');
    for (const name of ['bank.example', 'local.example', '8.8.8.8', '172.32.0.1', '192.169.0.1']) {
      const bad = await makeLeaf(authority, ['192.168.1.20', name], now);
      expect(verified(authority, bad), name).toContain('permitted subtree violation');
    }
  },
);

test.skipIf(!openssl)(
  'what openssl reads of the authority: one that signs no other authority, and its constraints',
  async () => {
    const { certificate } = await makeAuthority('bench-pc', Date.now());
    const read = execFileSync('openssl', ['x509', '-noout', '-text'], {
      input: certificate,
      encoding: 'utf8',
    });
    expect(read).toMatch(/Basic Constraints: critical\s+CA:TRUE, pathlen:0/);
    expect(read).toMatch(/Key Usage: critical\s+Certificate Sign, CRL Sign/);
    expect(read).toMatch(
      /Name Constraints: critical\s+Permitted:\s+DNS:local\s+DNS:localhost\s+IP:10\.0\.0\.0\/255\.0\.0\.0\s+IP:172\.16\.0\.0\/255\.240\.0\.0\s+IP:192\.168\.0\.0\/255\.255\.0\.0\s+IP:127\.0\.0\.0\/255\.0\.0\.0\s+IP:169\.254\.0\.0\/255\.255\.0\.0/,
    );
    expect(read).toContain('ASN1 OID: prime256v1');
    const printed = execFileSync('openssl', ['x509', '-noout', '-fingerprint', '-sha256'], {
      input: certificate,
      encoding: 'utf8',
    });
    expect(printed.trim().replace(/^.*=/, '')).toBe(fingerprintOf(certificate));
  },
);

test('a certificate is kept for 397 days, and made anew thirty days before its end or for other addresses, by the same authority', async () => {
  const data = folder();
  const keys = await KeptKeys.open(disk, data);
  const now = Date.now();
  const names = ['192.168.1.20', 'bench-pc.local'];
  const first = await keys.certified(names, 'bench-pc', now);
  const { validFrom, validTo } = new X509Certificate(first.leaf.certificate);
  expect((Date.parse(validTo) - Date.parse(validFrom)) / DAY_MS).toBe(LEAF_DAYS);
  const later = async (days: number, asked = names) =>
    (await KeptKeys.open(disk, data)).certified(asked, 'bench-pc', now + days * DAY_MS);
  expect(await later(365)).toEqual(first);
  const other = await later(1, ['192.168.1.21', 'bench-pc.local']);
  expect(other.authority).toBe(first.authority);
  expect(new X509Certificate(other.leaf.certificate).checkIP('192.168.1.21')).toBe('192.168.1.21');
  expect(new X509Certificate(other.leaf.certificate).checkIP('192.168.1.20')).toBeUndefined();
  const renewed = await later(368, ['192.168.1.21', 'bench-pc.local']);
  expect(renewed.leaf.certificate).not.toBe(other.leaf.certificate);
  expect(renewed.authority).toBe(first.authority);
  expect(
    new X509Certificate(renewed.leaf.certificate).verify(new X509Certificate(first.authority).publicKey),
  ).toBe(true);
});

test('keys that cannot be read are not made anew: no device would trust them', async () => {
  const data = folder();
  const keys = await KeptKeys.open(disk, data);
  await keys.certified(['127.0.0.2'], 'bench-pc', Date.now());
  writeFileSync(join(data, 'network-keys.json'), '{ "format": 1, "autho');
  await expect(KeptKeys.open(disk, data)).rejects.toThrow();
  writeFileSync(join(data, 'network-keys.json'), '{ "format": 2 }\n');
  await expect(KeptKeys.open(disk, data)).rejects.toThrow('newer version');
});

test('addresses of this machine that others can reach are served, and of those only private ones', () => {
  const one = (address: string, internal = false, family: 'IPv4' | 'IPv6' = 'IPv4') =>
    ({
      address,
      internal,
      family,
      netmask: '',
      mac: '',
      cidr: null,
      ...(family === 'IPv6' ? { scopeid: 0 } : {}),
    }) as never;
  expect(
    ownAddresses({
      lo: [one('127.0.0.1', true)],
      eth0: [one('192.168.1.20'), one('fe80::1', false, 'IPv6'), one('203.0.113.9')],
      wlan0: [one('10.0.0.4')],
    }),
  ).toEqual(['10.0.0.4', '192.168.1.20']);
  expect([localName('Bench-PC.lan'), localName('bench pc'), localName('')]).toEqual([
    'bench-pc.local',
    null,
    null,
  ]);
});
