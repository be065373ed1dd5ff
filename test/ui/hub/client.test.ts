// @vitest-environment node

import { afterEach, expect, test, vi } from 'vitest';
import { ask } from '#ui/hub/client.ts';
import { patienceFor } from '#ui/hub/patience.ts';
import { stickersAddress } from '#ui/hub/paper-addresses.ts';

afterEach(() => vi.unstubAllGlobals());

/** A hub that answers everything so, and what it was asked. */
function hubThat(answers: () => Response): { readonly asked: string[] } {
  const asked: string[] = [];
  vi.stubGlobal('fetch', async (path: string, { method, body }: RequestInit) => {
    asked.push(`${method ?? ''} ${path} ${typeof body === 'string' ? body : ''}`.trim());
    return answers();
  });
  return { asked };
}

test('a text is one step of an address, whatever signs it has, and what is not asked is left out', async () => {
  const { asked } = hubThat(() => Response.json({ code: 'unknown-code', message: 'no' }, { status: 404 }));
  await ask('GET /parts/:code', { params: { code: 'a/b ?\ud800' }, query: { station: 'table-saw' } });
  await ask('GET /jobs/:id', { params: { id: 'x' }, query: { why: undefined } });
  await ask('PUT /pin', { body: { pin: null } });
  expect(asked).toEqual([
    'GET /api/parts/a%2Fb%20%3F%EF%BF%BD?station=table-saw',
    'GET /api/jobs/x',
    'PUT /api/pin {"pin":null}',
  ]);
  expect(stickersAddress('boot room', 'roll-2x1', 3, ['AAA', 'BBB'])).toBe(
    '/api/jobs/boot%20room/stickers.pdf?stock=roll-2x1&from=3&codes=AAA,BBB',
  );
});

test('an answer is what was asked for, nothing, faults, a refusal, or that nobody is there', async () => {
  const lock = async (answers: () => Response) => {
    hubThat(answers);
    return ask('DELETE /session');
  };
  expect(await lock(() => Response.json({ pin: true, open: false }))).toEqual({
    kind: 'ok',
    value: { pin: true, open: false },
  });
  const faults = [{ path: 'units', code: 'word', message: 'expected "in" or "mm"' }];
  expect(await lock(() => Response.json({ errors: faults }, { status: 400 }))).toEqual({
    kind: 'faults',
    faults,
  });
  const refusal = { code: 'pin-needed', message: 'The office asks for its PIN.' };
  expect(await lock(() => Response.json(refusal, { status: 401 }))).toEqual({
    kind: 'refused',
    status: 401,
    refusal,
  });
  expect(await lock(() => new Response('<h1>other</h1>'))).toEqual({ kind: 'away' });
  hubThat(() => new Response(null, { status: 204 }));
  expect(await ask('DELETE /jobs/:id', { params: { id: 'x' } })).toEqual({ kind: 'ok', value: null });
});

test('what the hub has to reckon first is waited for longer', () => {
  expect(patienceFor('GET /jobs')).toBeLessThan(patienceFor('GET /jobs/:id', { query: { why: '1' } }));
  expect(patienceFor('POST /backups')).toBeLessThan(patienceFor('POST /import'));
});

test('an answer in another form than the table says is none', async () => {
  hubThat(() => Response.json({ pin: 'yes' }));
  await expect(ask('GET /session')).rejects.toThrow('pin');
});

test('what goes with an endpoint is held to the table', async () => {
  const { asked } = hubThat(() => Response.json({}, { status: 500 }));
  // @ts-expect-error: its address names a job
  await ask('GET /jobs/:id/file');
  // @ts-expect-error: it names it by its id
  await ask('GET /jobs/:id/file', { params: { code: 'x' } });
  // @ts-expect-error: it takes no such question
  await ask('GET /jobs/:id', { params: { id: 'x' }, query: { dry: '1' } });
  const body = { id: 'x', code: 'y', station: 'mortiser', stage: 'mortise', mark: 'done' } as const;
  // @ts-expect-error: a mark says when
  await ask('POST /marks', { body });
  // @ts-expect-error: it gives no JSON
  await ask('GET /jobs/:id/papers.pdf', { params: { id: 'x' } });
  expect(asked).toHaveLength(5);
});
