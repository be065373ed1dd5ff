import { PassThrough } from 'node:stream';
import { expect, test } from 'vitest';
import { inTime } from '#main/hub/in-time.ts';
import { Problem } from '#main/hub/problem.ts';

test('a body that goes on coming is read to its end, however long that takes', async () => {
  const body = new PassThrough();
  const sending = (async () => {
    for (let k = 0; k < 6; k += 1) {
      body.write(`piece ${k};`);
      await new Promise((later) => setTimeout(later, 40));
    }
    body.end();
  })();
  let read = '';
  for await (const piece of inTime(body, 200)) read += piece.toString();
  await sending;
  expect(read).toBe('piece 0;piece 1;piece 2;piece 3;piece 4;piece 5;');
});

test('a body that stands still is given up, and the time that its reader takes does not count', async () => {
  const body = new PassThrough();
  body.write('a');
  const reading = inTime(body, 50);
  await reading.next();
  await new Promise((later) => setTimeout(later, 120));
  body.write('b');
  expect((await reading.next()).value).toEqual(Buffer.from('b'));
  const refused: unknown = await reading.next().catch((error: unknown) => error);
  if (!(refused instanceof Problem)) throw new Error('no problem');
  expect([refused.status, refused.bodyIn('en').code]).toEqual([408, 'body-late']);
  body.destroy(new Error('gone'));
});
