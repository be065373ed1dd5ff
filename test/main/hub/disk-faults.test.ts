import { expect, test } from 'vitest';
import { milled, SMALL_JOB } from '../store/small-shop.ts';
import { tryingPort } from '../store/trying-port.ts';
import { liveHub } from './live-hub.ts';

test.each([
  ['write', 'ENOSPC'],
  ['write', 'EROFS'],
  ['flush', 'EIO'],
] as const)(
  'with %s failing (%s) marks are refused in words, health says so, and all is well when it is mended',
  async (step, code) => {
    const files = tryingPort();
    const { ask } = await liveHub({ files });
    const saved = await ask('POST', '/jobs', SMALL_JOB);
    const [part] = saved.body.parts as { code: string }[];
    const mark = milled(part?.code ?? '');
    files.break(step, code, /log/);
    const refused = await ask('POST', '/marks', mark);
    expect([refused.status, refused.body.code]).toEqual([507, 'store']);
    expect(refused.body.message).toContain('recording goes on again at once');
    expect((await ask('GET', '/health')).body).toMatchObject({ ok: false });
    expect((await ask('GET', '/board')).status).toBe(200);
    files.mend();
    expect((await ask('POST', '/marks', mark)).status).toBe(200);
    expect((await ask('GET', '/health')).body).toMatchObject({ ok: true });
  },
);

test('a job that cannot be written is refused and the one of before stays', async () => {
  const files = tryingPort();
  const { ask } = await liveHub({ files });
  await ask('POST', '/jobs', SMALL_JOB);
  files.break('rename', 'EIO');
  const told = await ask('PUT', '/jobs/boot-room', { revision: 1, file: { ...SMALL_JOB, job: 'Other' } });
  expect([told.status, told.body.code]).toEqual([507, 'store']);
  expect((await ask('GET', '/jobs/boot-room')).body.job).toBe(SMALL_JOB.job);
  files.mend();
});
