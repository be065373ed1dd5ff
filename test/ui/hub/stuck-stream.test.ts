// @vitest-environment node

import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { screenId } from '#ui/hub/screen-id.ts';
import { HubStream } from '#ui/hub/hub-stream.ts';
import { live } from '#ui/hub/live.svelte.ts';
import { openShop } from '../station/shop-for-stations.ts';

/** A stream that says nothing but what it is told to. */
class SilentEvents extends EventTarget {
  static all: SilentEvents[] = [];
  readonly at = Date.now();
  closed = false;
  readonly address: string;

  constructor(address: string) {
    super();
    this.address = address;
    SilentEvents.all.push(this);
  }
  close(): void {
    this.closed = true;
  }
  say(name: string, data: object): void {
    this.dispatchEvent(new MessageEvent(name, { data: JSON.stringify(data) }));
  }
}

beforeEach(() => {
  SilentEvents.all = [];
  vi.stubGlobal('EventSource', SilentEvents);
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const GREETING = { seq: 7, ok: true, greeting: { resumed: false, last: { seq: 7, mark: 'm-7' } } };
const NOTHING = {
  begun: () => undefined,
  beat: () => undefined,
  mark: () => undefined,
  job: () => undefined,
  print: () => undefined,
  shop: () => undefined,
  stations: () => undefined,
  broken: () => undefined,
  silent: () => undefined,
};

test('a screen whose stream is never answered shows its jobs all the same, and asks for another stream', async () => {
  const { plan } = openShop();
  const known = live.jobs.get(plan.id);
  if (known === undefined) throw new Error('no job');
  vi.spyOn(live.outbox, 'open').mockResolvedValue();
  live.jobs = new Map();
  live.loaded = false;
  const at = `/api/jobs/${encodeURIComponent(plan.id)}`;
  const answers: Readonly<Record<string, unknown>> = {
    '/api/jobs': { jobs: [known.line] },
    [at]: plan,
    [`${at}/file`]: { id: plan.id, revision: 1, file: known.file },
    [`${at}/progress`]: known.confirmed,
    '/api/health': { ok: true, version: '', seq: 7, troubles: [] },
  };
  vi.stubGlobal('fetch', (path: string) => Promise.resolve(Response.json(answers[path])));
  live.start();
  await vi.advanceTimersByTimeAsync(1000);
  expect([...live.jobs.keys()]).toEqual([plan.id]);
  expect(live.loaded).toBe(true);
  await vi.advanceTimersByTimeAsync(10_000);
  expect(live.away).toBe(true);
  expect(SilentEvents.all.length).toBeGreaterThan(1);
  expect(SilentEvents.all[0]?.closed).toBe(true);
  SilentEvents.all.at(-1)?.say('beat', GREETING);
  expect(live.away).toBe(false);
});

test('a stream that falls silent is given up, and the next goes on from the last mark that was told', async () => {
  const begun: boolean[] = [];
  const stream = new HubStream({ ...NOTHING, begun: (resumed) => begun.push(resumed) });
  stream.open();
  const [first] = SilentEvents.all;
  expect(first?.address).toBe(`/api/events?screen=${screenId}`);
  first?.say('beat', GREETING);
  await vi.advanceTimersByTimeAsync(5000);
  first?.say('beat', { seq: 7 });
  await vi.advanceTimersByTimeAsync(5000);
  expect(SilentEvents.all).toHaveLength(1);
  await vi.advanceTimersByTimeAsync(2500);
  expect(first?.closed).toBe(true);
  const next = SilentEvents.all[1];
  expect(next?.address).toBe(`/api/events?screen=${screenId}&after=7&mark=m-7`);
  // What a stream says that was given up counts no more.
  first?.say('beat', { ...GREETING, greeting: { resumed: false, last: null } });
  next?.say('beat', { seq: 8, greeting: { resumed: true, last: { seq: 8, mark: 'm-8' } } });
  next?.dispatchEvent(new Event('error'));
  await vi.advanceTimersByTimeAsync(1000);
  expect(SilentEvents.all[2]?.address).toBe(`/api/events?screen=${screenId}&after=7&mark=m-7`);
  // A hub of before, or of a later form, greets with a beat of its own.
  SilentEvents.all[2]?.say('beat', { seq: 'many' });
  expect(begun).toEqual([false, true, false]);
});

test('fifty screens whose hub is gone for ten seconds come back spread over the time, all within four seconds', async () => {
  let back = false;
  vi.stubGlobal(
    'EventSource',
    class extends SilentEvents {
      constructor(address: string) {
        super(address);
        const there = back;
        setTimeout(() => (there ? this.say('beat', GREETING) : this.dispatchEvent(new Event('error'))), 5);
      }
    },
  );
  const came: number[] = [];
  let ready = Number.POSITIVE_INFINITY;
  for (let k = 0; k < 50; k += 1)
    new HubStream({ ...NOTHING, begun: () => came.push(Date.now() - ready) }).open();
  await vi.advanceTimersByTimeAsync(10_000);
  ready = Date.now();
  back = true;
  const asked = SilentEvents.all.length;
  await vi.advanceTimersByTimeAsync(4000);
  expect(came).toHaveLength(50);
  const at = SilentEvents.all.slice(asked).map((each) => Math.floor((each.at - ready) / 250));
  const busiest = Math.max(...[...new Set(at)].map((span) => at.filter((each) => each === span).length));
  // Spread evenly over the time that they wait, some five come in each quarter of a second.
  expect(busiest).toBeLessThan(16);
});

test('a hub that is silent is told as away, and asked for another stream, on a device whose clock is set back meanwhile', async () => {
  const silent = vi.fn();
  const stream = new HubStream({ ...NOTHING, silent });
  stream.open();
  SilentEvents.all[0]?.say('beat', GREETING);
  vi.setSystemTime(Date.now() - 3_600_000);
  await vi.advanceTimersByTimeAsync(3000);
  expect(silent).toHaveBeenCalled();
  await vi.advanceTimersByTimeAsync(7000);
  expect(SilentEvents.all.length).toBeGreaterThan(1);
});
