// @vitest-environment node
import { afterEach, expect, test, vi } from 'vitest';
import { jobSaved } from '#core/api/jobs-api.ts';
import { ask } from '#ui/hub/client.ts';
import { loadJob } from '#ui/hub/load-job.ts';
import { liveHub } from '../../main/hub/live-hub.ts';
import { SMALL_JOB } from '../../main/store/small-shop.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

/** A hub with a job of which something was done, and a screen whose hub tells the progress or does not. */
async function screenOf() {
  const live = await liveHub();
  const saved = jobSaved.parse((await live.ask('POST', '/jobs', SMALL_JOB)).body);
  const code = saved.parts[0]?.code;
  const mark = {
    id: '11111111-0000-4000-8000-000000000001',
    code,
    station: 'milling',
    stage: 'mill',
    mark: 'done',
    at: '2026-11-30T08:00:00Z',
  };
  expect((await live.ask('POST', '/marks', mark)).status).toBe(200);
  const tells = { progress: true };
  const direct = fetch;
  vi.stubGlobal('fetch', (path: string, init?: RequestInit) => {
    if (path.startsWith('http')) return direct(path, init);
    if (!tells.progress && path.endsWith('/progress')) return Promise.reject(new TypeError('cut off'));
    return direct(`${live.hub.url}${path}`, init);
  });
  const list = await ask('GET /jobs');
  const line = list.kind === 'ok' ? list.value.jobs.find(({ id }) => id === SMALL_JOB.id) : undefined;
  if (line === undefined) throw new Error('the job is there');
  return { tells, line, code: String(code) };
}

test('a job of which it does not come what was done is not shown as if nothing was', async () => {
  const { tells, line, code } = await screenOf();
  tells.progress = false;
  const none = { plan: false, progress: false };
  expect(await loadJob(line, undefined, none)).toMatchObject({ job: null, whole: false, fresh: false });
  tells.progress = true;
  const loaded = await loadJob(line, undefined, none);
  expect(loaded).toMatchObject({ whole: true, fresh: true });
  expect(Object.keys(loaded.job?.confirmed.parts[code]?.done ?? {})).toEqual(['mill']);
});

test('a job that is known keeps what was done where that does not come anew, and is not taken for told', async () => {
  const { tells, line } = await screenOf();
  const { job } = await loadJob(line, undefined, { plan: false, progress: false });
  if (job === null) throw new Error('the job came');
  tells.progress = false;
  const again = await loadJob(line, job, { plan: true, progress: false });
  expect(again).toMatchObject({ whole: false, fresh: false });
  expect(again.job?.confirmed).toBe(job.confirmed);
  expect(await loadJob(line, job, { plan: true, progress: true })).toMatchObject({
    whole: true,
    fresh: false,
  });
});
