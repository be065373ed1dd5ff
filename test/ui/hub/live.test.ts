// @vitest-environment node

import 'fake-indexeddb/auto';
import { afterEach, expect, test, vi } from 'vitest';
import type { Mark } from '#core/marks/mark.ts';
import { KeptJobs } from '#ui/hub/kept-jobs.ts';
import { live } from '#ui/hub/live.svelte.ts';
import { openShop } from '../station/shop-for-stations.ts';

afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

test('a blank that was given up here, and its replacement, are known from the answer, before the hub’s own event of it', async () => {
  const { plan } = openShop();
  vi.restoreAllMocks();
  const rail = plan.doors[0]?.parts.find(({ part }) => part === 'rail-bottom');
  if (rail === undefined) throw new Error('no rail');
  const replacement = '7K2Q4MX8BD';
  vi.stubGlobal(
    'fetch',
    vi.fn(() => Promise.resolve(Response.json({ code: rail.code, stages: [], next: null, replacement }))),
  );
  const mark: Mark = {
    id: crypto.randomUUID(),
    code: rail.code,
    station: 'milling',
    stage: 'mill',
    mark: 'spoiled',
    at: '2026-11-26T08:00:00Z',
  };
  const door = plan.doors[0]?.door ?? '';
  const posted = await live.outbox.post({ mark, job: plan.id, door, part: rail.part });
  expect(posted).toMatchObject({ kind: 'ok', value: { replacement } });
  const progress = live.jobs.get(plan.id)?.progress;
  if (progress === undefined) throw new Error('no progress');
  const { parts } = progress;
  expect(parts[rail.code]).toMatchObject({ replacedBy: replacement, spoiled: { stage: 'mill' } });
  expect(parts[replacement]?.number).toBe(1);
  expect(live.find(replacement)?.found.part.part).toBe('rail-bottom');
  expect(live.jobs.get(plan.id)?.confirmed.parts).toEqual({});
});

/** A hub with the job of the stations' shop; `fails` says of each address whether this time no answer comes. */
function hubThat(fails: (path: string) => boolean): string[] {
  const { plan } = openShop();
  const known = live.jobs.get(plan.id);
  if (known === undefined) throw new Error('no job');
  vi.restoreAllMocks();
  live.jobs = new Map();
  live.lines = [];
  const at = `/api/jobs/${encodeURIComponent(plan.id)}`;
  const answers: Readonly<Record<string, unknown>> = {
    '/api/jobs': { jobs: [known.line] },
    [at]: plan,
    [`${at}/file`]: { id: plan.id, revision: 1, file: known.file },
    [`${at}/progress`]: known.confirmed,
  };
  const asked: string[] = [];
  vi.stubGlobal('fetch', (path: string) => {
    asked.push(path);
    return fails(path)
      ? Promise.reject(new Error('no answer'))
      : Promise.resolve(Response.json(answers[path], { status: answers[path] === undefined ? 404 : 200 }));
  });
  return asked;
}

test.each(['/api/jobs', /^\/api\/jobs\/[^/]+$/, /\/file$/, /\/progress$/])(
  'where %s does not come once, it is asked for again after a moment, with no event of the hub',
  async (what) => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    let failed = 0;
    const asked = hubThat((path) => {
      const is = typeof what === 'string' ? path === what : what.test(path);
      if (is) failed += 1;
      return is && failed === 1;
    });
    await live.reload();
    const lists = () => asked.filter((path) => path === '/api/jobs').length;
    expect(lists()).toBe(1);
    await vi.advanceTimersByTimeAsync(2000);
    await vi.waitFor(() => expect(live.jobs.size).toBe(1));
    await live.reload();
    const [job] = live.jobs.values();
    expect(job?.file).toBeDefined();
    expect(live.lines).toHaveLength(1);
    const before = lists();
    await vi.advanceTimersByTimeAsync(300_000);
    expect(lists()).toBe(before);
  },
);

test('a hub that never gives its jobs is asked again after longer and longer, and not for ever', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  const asked = hubThat(() => true);
  await live.reload();
  const counts: number[] = [];
  for (const seconds of [5, 60, 600, 6000]) {
    await vi.advanceTimersByTimeAsync(seconds * 1000);
    counts.push(asked.length);
  }
  expect(counts).toEqual([3, 7, 8, 8]);
});

test('while the hub is away, a sticker of a job that was put into the bin is known for that, and no more once it is gone for good', async () => {
  let jobs = true;
  let bin = true;
  hubThat(() => false);
  const { fetch: there } = globalThis;
  vi.stubGlobal('fetch', (path: string) => {
    if (path === '/api/bin')
      return Promise.resolve(
        Response.json({
          jobs: bin
            ? [
                {
                  id: plan.id,
                  job: plan.job,
                  doors: 2,
                  parts: 12,
                  binned: '2026-11-25T08:15:00.000Z',
                  marks: 0,
                  begun: 0,
                  finished: 0,
                  printed: 0,
                },
              ]
            : [],
        }),
      );
    return path === '/api/jobs' && !jobs ? Promise.resolve(Response.json({ jobs: [] })) : there(path);
  });
  await live.reload();
  const [job] = live.jobs.values();
  if (job === undefined) throw new Error('no job');
  const { plan } = job;
  const code = plan.doors[0]?.parts[0]?.code ?? '';
  const whileAway = async () => {
    live.away = true;
    const brought = await live.bring(code);
    live.away = false;
    return brought;
  };
  jobs = false;
  await live.reload();
  expect(live.jobs.size).toBe(0);
  expect(await whileAway()).toBe('binned');
  await vi.waitFor(async () =>
    expect((await new KeptJobs().all()).map(({ line, binned }) => [line.id, binned])).toEqual([
      [plan.id, true],
    ]),
  );
  bin = false;
  await live.reload();
  expect(await whileAway()).toBe('unknown');
});
