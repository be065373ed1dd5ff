import { expect, test } from 'vitest';
import { RecentAnswers } from '#main/hub/recent-answers.ts';
import { SMALL_JOB } from '../store/small-shop.ts';
import { liveHub } from './live-hub.ts';

test('an answer is made once for many who ask, and anew when it is too long ago', () => {
  const recent = new RecentAnswers(25);
  let made = 0;
  const ask = (tag: string, length = 10) =>
    recent.of(tag, () => {
      made += 1;
      return Buffer.alloc(length, tag);
    });
  for (let k = 0; k < 50; k += 1) expect(ask('a').toString()).toBe('aaaaaaaaaa');
  expect(made).toBe(1);
  ask('b');
  ask('a');
  ask('c');
  expect(made).toBe(3);
  ask('a');
  expect(made).toBe(3);
  ask('b');
  expect(made).toBe(4);
  expect(ask('large', 100)).toHaveLength(100);
  ask('large', 100);
  expect(made).toBe(5);
  ask('a');
  expect(made).toBe(6);
});

test('a plan that was asked for before is another one once its job is saved anew, and in another language', async () => {
  const { ask } = await liveHub();
  const saved = await ask('POST', '/jobs', SMALL_JOB);
  const address = `/jobs/${String(saved.body.id)}`;
  const text = async (language = 'en') =>
    JSON.stringify((await ask('GET', address, undefined, { 'accept-language': language })).body);
  const before = await text();
  expect(await text()).toBe(before);
  const thicker = { ...SMALL_JOB, defaults: { thickness: '7/8' } };
  expect((await ask('PUT', address, { revision: 1, file: thicker })).status).toBe(200);
  expect(await text()).not.toBe(before);
});
