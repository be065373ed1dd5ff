import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { PrintSystem } from '#main/printing/printer.ts';
import { networkHub } from './over-network.ts';

const JOB: unknown = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../../main/demo/demo-job.json'), 'utf8'),
);

test('a device has few prints on their way, and another one prints all the same', async () => {
  let letGo: () => void = () => undefined;
  const stuck = new Promise<void>((over) => (letGo = over));
  const printing: PrintSystem = {
    list: () => Promise.resolve({ ok: true, printers: [] }),
    print: () => stuck.then(() => ({ ok: true })),
  };
  const live = await networkHub({ printing });
  const saved = await live.ask('POST', '/jobs', JOB, await live.office());
  const [one, other] = [await live.pair('one'), await live.pair('other')];
  const print = async ({ cookie }: { readonly cookie: string }) => {
    const body = { job: saved.body.id, kind: 'sheet', printer: 'stuck' };
    return live.over('POST', '/api/prints', { body, headers: { cookie } });
  };
  const taken = [];
  for (let k = 0; k < 8; k += 1) taken.push((await print(one)).status);
  expect(taken).toEqual(Array.from({ length: 8 }, () => 202));
  expect((await print(one)).body.code).toBe('prints-many');
  expect((await print(other)).status).toBe(202);
  letGo();
  await expect.poll(async () => (await print(one)).status).toBe(202);
});

test('a device gets no name with what no keyboard types', async () => {
  const live = await networkHub();
  const named = async (name: string) => {
    const { code } = await live.offer();
    const body = { secret: code, name, station: 'milling', ...(await live.proof()) };
    return (await live.over('POST', '/api/pairing', { body })).status;
  };
  expect(await named('mill\u0000\u001b[2J')).toBe(400);
  expect(await named('Hobel, Fräse')).toBe(201);
});
