// @vitest-environment node

import { createHash, createHmac } from 'node:crypto';
import { afterEach, expect, test, vi } from 'vitest';
import { ask } from '#ui/hub/client.ts';
import { whatIsAt } from '#ui/moved/proves.ts';

const TOKEN = 'c2VjcmV0LXRva2VuLW9mLXRoaXMtdmVyeS1kZXZpY2U';
const KNOWN = { device: 'saw', token: TOKEN, addresses: [] };
const AT = 'https://192.168.1.50:7518';

afterEach(() => vi.unstubAllGlobals());

/** Whatever is at an address answers so; gives everything that was sent to it. */
function thereIs(answers: (nonce: string) => Response | Promise<Response>): { readonly sent: string[] } {
  const sent: string[] = [];
  vi.stubGlobal('fetch', async (address: string, said: RequestInit) => {
    sent.push(JSON.stringify([address, said]));
    const { nonce = '' } = JSON.parse(typeof said.body === 'string' ? said.body : '{}') as { nonce?: string };
    return answers(nonce);
  });
  return { sent };
}

function proof(nonce: string, at: string, token = TOKEN): Response {
  const key = createHash('sha256').update(token).digest();
  return Response.json({ proof: createHmac('sha256', key).update(`${nonce} ${at}`).digest('base64url') });
}

test('only the hub that knows the token is taken for it, at the address that it answers for', async () => {
  const found = async (answers: (nonce: string) => Response | Promise<Response>) => {
    const { sent } = thereIs(answers);
    const what = await whatIsAt(AT, KNOWN);
    // Whatever is there, the token was not sent to find it out.
    expect(sent).toHaveLength(1);
    expect(sent.join()).not.toContain(TOKEN);
    expect(sent[0]).toContain(`${AT}/api/moved/proof`);
    return what;
  };
  expect(await found((nonce) => proof(nonce, AT))).toBe('hub');
  // One in between hands the hub's own answer on.
  expect(await found((nonce) => proof(nonce, 'https://192.168.1.20:7518'))).toBe('stranger');
  expect(await found((nonce) => proof(nonce, AT, 'another'))).toBe('stranger');
  expect(await found(() => proof('of another time', AT))).toBe('stranger');
  expect(await found(() => Response.json({ welcome: true }))).toBe('stranger');
  expect(await found(() => Response.json({ code: 'origin', message: 'no' }, { status: 403 }))).toBe(
    'stranger',
  );
  const gone = { code: 'device-unknown', message: 'no' };
  expect(await found(() => Response.json(gone, { status: 404 }))).toBe('revoked');
  expect(await found(() => Promise.reject(new TypeError('Failed to fetch')))).toBe('nothing');
  expect(await found(() => new Response('<html>', { status: 200 }))).toBe('nothing');
});

test('a mark is sent elsewhere by the token in a header, with no cookie and to no other address; a device that is unknown there stays where it is', async () => {
  const assign = vi.fn();
  vi.stubGlobal('location', { assign });
  const mark = {
    id: '6f9619ff-8b86-4011-b42d-00c04fc964ff',
    code: 'ABCDEFGHJK',
    station: 'milling',
    stage: 'mill',
    mark: 'done',
    at: '2026-01-02T03:04:05.000Z',
  } as const;
  const refused = () => Response.json({ code: 'not-paired', message: 'no' }, { status: 401 });
  const { sent } = thereIs(refused);
  const answer = await ask('POST /marks', { body: mark, to: { origin: AT, token: TOKEN } });
  expect(answer).toMatchObject({ kind: 'refused', status: 401 });
  expect(assign).not.toHaveBeenCalled();
  expect(JSON.parse(sent[0] ?? '')).toMatchObject([
    `${AT}/api/marks`,
    { credentials: 'omit', redirect: 'error', headers: { authorization: `Bearer ${TOKEN}` } },
  ]);
  const here = thereIs(refused);
  await ask('POST /marks', { body: mark });
  expect(here.sent.join()).not.toContain('authorization');
  expect(assign).toHaveBeenCalledWith('/pairing');
});
