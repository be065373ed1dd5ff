import { expect, test } from 'vitest';
import { type LiveHub, liveHub } from './live-hub.ts';

const JOB = {
  format: 1,
  job: 'Sail loft',
  units: 'in',
  doors: [{ mark: 'A', quantity: 20, opening: { width: '16', height: '30' } }],
};

/** A hub with a job, and two codes of it: one with a 0 among its first nine, one that ends in a 0, 1, O or I. */
async function shopWithCodes(): Promise<{ live: LiveHub; id: string; codes: readonly [string, string] }> {
  const live = await liveHub();
  const { body } = await live.ask('POST', '/jobs', JOB);
  const codes = (body.parts as { code: string }[]).map(({ code }) => code);
  const withZero = codes.find((code) => /0/.test(code.slice(0, 9)));
  const atCheck = codes.find((code) => /[01OI]$/.test(code));
  if (withZero === undefined || atCheck === undefined) throw new Error('no such codes in this job');
  return { live, id: String(body.id), codes: [withZero, atCheck] };
}

/** As somebody types it who takes every 0 for an O and every 1 for an I, and at the end the other way round too. */
function mistyped(code: string): string {
  const last = { '0': 'o', O: '0', '1': 'i', I: '1' }[code.slice(9)] ?? code.slice(9);
  return code.slice(0, 9).replace(/0/g, 'O').replace(/1/g, 'i') + last;
}

test('a part is found by its code with O typed for 0 and I for 1', async () => {
  const { live, codes } = await shopWithCodes();
  for (const code of codes) {
    expect(mistyped(code)).not.toBe(code);
    const { status, body } = await live.ask('GET', `/parts/${mistyped(code)}`);
    expect([status, body.code]).toEqual([200, code]);
  }
});

test('a mark by such a code is of the same part, and the same mark by the code as printed is the same', async () => {
  const { live, codes } = await shopWithCodes();
  for (const [k, code] of codes.entries()) {
    const mark = {
      id: `00000000-0000-4000-8000-00000000000${k}`,
      code: mistyped(code),
      station: 'milling',
      stage: 'mill',
      mark: 'done',
      at: '2026-11-25T08:00:00.000Z',
    };
    const first = await live.ask('POST', '/marks', mark);
    expect([first.status, first.body.code]).toEqual([200, code]);
    const again = await live.ask('POST', '/marks', { ...mark, code });
    expect([again.status, again.body]).toEqual([200, first.body]);
  }
});

test('stickers are made for such codes, and kept as printed under the codes that they bear', async () => {
  const { live, id, codes } = await shopWithCodes();
  const typed = codes.map(mistyped);
  const made = await live.ask('GET', `/jobs/${id}/stickers.pdf?codes=${typed.join(',')}`);
  expect([made.status, JSON.parse(made.headers.get('x-stickers') ?? '{}')]).toEqual([
    200,
    expect.objectContaining({ parts: new Set(codes).size }),
  ]);
  const told = await live.ask('POST', `/jobs/${id}/printed`, { codes: typed, stock: 'letter-3x10' });
  expect(told.status).toBe(200);
  expect(Object.keys(told.body.codes as object).sort()).toEqual([...new Set(codes)].sort());
});
