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
  // On another device alone.
  const absent = en['trust.others'];
  expect(page).not.toContain(absent);
  expect(page.replaceAll('<br>', '')).toContain(live.hub.network.fingerprint);
  for (const device of ['Android', 'iPhone, iPad', 'Windows', 'macOS', 'Linux'])
    expect(page).toContain(`<details open><summary><h3>${device}</h3></summary>`);
  expect(page.match(/These steps were not tried by us/g)).toHaveLength(4);
  expect(page.match(/<svg/g)).toHaveLength(15);
  const german = (await get(trust, 'GET', { 'accept-language': 'de' })).bytes.toString();
  expect(german).toContain('<h1>Dieser Werkstatt vertrauen</h1>');
  const english = Object.entries<string>(en).filter(([key]) => key.startsWith('trust.'));
  expect(english.filter(([, words]) => !page.includes(`>${words}<`))).toEqual([['trust.others', absent]]);
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

// What browsers say of themselves, from memory.
test.each([
  [
    'Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 Chrome/156.0.0.0 Mobile Safari/537.36',
    ['Android'],
  ],
  [
    'Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605.1.15 Safari/604.1',
    ['iPhone, iPad'],
  ],
  [
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 Chrome/156.0.0.0 Safari/537.36',
    ['Windows'],
  ],
  [
    'Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 Safari/605.1.15',
    ['macOS', 'iPhone, iPad'],
  ],
  ['Mozilla/5.0 (X11; Linux x86_64; rv:153.0) Gecko/20100101 Firefox/153.0', ['Linux']],
])(
  'the steps of the device that asks stand open and first, before what comes then: %s',
  async (userAgent, kinds) => {
    const live = await networkHub();
    const trust = live.hub.network.addresses[0]?.trust ?? '';
    const page = (await get(trust, 'GET', { 'user-agent': userAgent })).bytes.toString();
    const [own = '', others = ''] = page.split(`<h2>${en['trust.then']}</h2>`);
    const of = (half: string) =>
      [...half.matchAll(/<details( open)?><summary><h3>([^<]+)</g)].map(([, open, kind]) => ({
        open: open !== undefined,
        kind,
      }));
    expect(of(own)).toEqual(kinds.map((kind) => ({ open: true, kind })));
    expect(of(others).map(({ open }) => open)).toEqual(Array(5 - kinds.length).fill(false));
    expect(others).toContain(en['trust.others']);
  },
);

test('the trust page is gone with the network', async () => {
  const live = await networkHub();
  const trust = live.hub.network.addresses[0]?.trust ?? '';
  await live.ask('PUT', '/network', { on: false }, await live.office());
  await expect(get(trust)).rejects.toThrow('ECONNREFUSED');
});
