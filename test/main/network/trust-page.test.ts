import { request } from 'node:http';
import { X509Certificate } from 'node:crypto';
import { expect, test } from 'vitest';
import { de } from '#core/words/de.ts';
import { en } from '#core/words/en.ts';
import { networkHub } from './over-network.ts';

interface Given {
  readonly status: number;
  readonly type: string;
  readonly bytes: Buffer;
}

function get(url: string, method = 'GET', headers: Record<string, string> = {}): Promise<Given> {
  return new Promise((told, failed) => {
    const asked = request(url, { method, headers, agent: false }, (answer) => {
      const pieces: Buffer[] = [];
      answer.on('data', (piece: Buffer) => pieces.push(piece));
      answer.on('end', () =>
        told({
          status: answer.statusCode ?? 0,
          type: answer.headers['content-type'] ?? '',
          bytes: Buffer.concat(pieces),
        }),
      );
    });
    asked.on('error', failed);
    asked.end();
  });
}

test('the trust page gives the certificate, as it is and as a profile, with its fingerprint and the steps, and nothing else', async () => {
  const live = await networkHub();
  const trust = live.hub.network.addresses[0]?.trust ?? '';
  expect(trust).toMatch(/^http:\/\/127\.0\.0\.2:\d+$/);
  const page = (await get(trust)).bytes.toString();
  expect(page.replaceAll('<br>', '')).toContain(live.hub.network.fingerprint);
  for (const device of ['Android', 'iPhone, iPad', 'Windows', 'macOS', 'Linux'])
    expect(page).toContain(`<h3>${device}</h3>`);
  expect(page.match(/These steps were not tried by us/g)).toHaveLength(4);
  expect(page.match(/<svg/g)).toHaveLength(15);
  const german = (await get(trust, 'GET', { 'accept-language': 'de' })).bytes.toString();
  expect(german).toContain('<h1>Dieser Werkstatt vertrauen</h1>');
  const english = Object.entries<string>(en).filter(([key]) => key.startsWith('trust.'));
  expect(english.filter(([, words]) => !page.includes(`>${words}<`))).toEqual([]);
  // What is called alike in both stays.
  const alike = Object.values<string>(de.words);
  expect(english.filter(([, words]) => german.includes(`>${words}<`) && !alike.includes(words))).toEqual([]);
  const certificate = await get(`${trust}/shoulderline.crt`);
  expect(certificate.type).toBe('application/x-x509-ca-cert');
  expect(certificate.bytes.equals(new X509Certificate(live.authority).raw)).toBe(true);
  const profile = await get(`${trust}/shoulderline.mobileconfig`);
  expect(profile.type).toBe('application/x-apple-aspen-config');
  const inside = /<data>(.+)<\/data>/.exec(profile.bytes.toString())?.[1] ?? '';
  expect(Buffer.from(inside, 'base64').equals(certificate.bytes)).toBe(true);
  for (const path of [
    '/api/jobs',
    '/api/pairing',
    '/pairing',
    '/network-keys.json',
    '/../network-keys.json',
    '/station',
  ])
    expect((await get(`${trust}${path}`)).status, path).toBe(404);
  expect((await get(trust, 'POST')).status).toBe(405);
  expect((await get(trust, 'HEAD')).bytes).toHaveLength(0);
});

test('the trust page is gone with the network', async () => {
  const live = await networkHub();
  const trust = live.hub.network.addresses[0]?.trust ?? '';
  await live.ask('PUT', '/network', { on: false }, await live.office());
  await expect(get(trust)).rejects.toThrow('ECONNREFUSED');
});
