import { afterAll, beforeAll, expect, vi } from 'vitest';
import { live } from '#ui/hub/live.svelte.ts';
import { type LiveHub, liveHub } from '../../main/hub/live-hub.ts';
import { milled } from '../../main/store/small-shop.ts';
import { FetchedEvents } from './fetched-events.ts';

export const JOB = (id: string, width = '16', quantity = 2) => ({
  format: 1,
  id,
  job: id,
  units: 'in',
  doors: [{ mark: 'A', quantity, opening: { width, height: '30' } }],
});

/** What the screen asked for, but for the stream. */
const asked: string[] = [];
let url = '';
let pending = 0;
/** What happens once while the answer of an address is on its way. */
export const onTheWay = new Map<string, () => Promise<unknown>>();
const { fetch: real } = globalThis;

/** From here on this screen speaks to whatever hub its tests start. */
export function screenAtHub(): void {
  beforeAll(() => {
    vi.stubGlobal('EventSource', FetchedEvents);
    vi.stubGlobal('fetch', async (path: string, options?: RequestInit) => {
      if (!path.startsWith('/')) return real(path, options);
      if (path.startsWith('/api/events')) return real(`${url}${path}`, options);
      asked.push(path);
      pending += 1;
      try {
        const answer = await real(`${url}${path}`, options);
        const happens = onTheWay.get(path);
        onTheWay.delete(path);
        await happens?.();
        return answer;
      } finally {
        pending -= 1;
      }
    });
  });
  afterAll(() => {
    vi.unstubAllGlobals();
  });
}

const NOWHERE = 'http://127.0.0.1:9';

/** A hub with two jobs, the first of so many doors, and this screen at it. */
export async function shopWithScreen(
  quantity = 2,
): Promise<{ readonly hub: LiveHub; readonly codes: readonly string[] }> {
  vi.spyOn(Math, 'random').mockReturnValue(0);
  const hub = await liveHub();
  const { body } = await hub.ask('POST', '/jobs', JOB('first', '16', quantity));
  await hub.ask('POST', '/jobs', JOB('second'));
  const codes = (body.parts as { code: string }[]).map(({ code }) => code);
  await hub.hub.store.mark(milled(codes.at(-1) ?? ''));
  url = hub.hub.url;
  live.start();
  await vi.waitFor(() => expect([...live.jobs.keys()]).toEqual(['first', 'second']), { timeout: 15_000 });
  await settled();
  return { hub, codes };
}

/** Waits until the screen has its stream and asks for nothing more. */
export async function settled(): Promise<void> {
  await vi.waitFor(
    async () => {
      const before = asked.length;
      await new Promise((later) => setTimeout(later, 150));
      expect([live.away, pending, asked.length]).toEqual([false, 0, before]);
    },
    { timeout: 15_000, interval: 10 },
  );
}

/** The hub is away while something happens in it; what the screen asks for when it is back. */
export async function whileAway(
  hub: LiveHub,
  happens: () => Promise<unknown>,
  between?: () => void,
): Promise<string[]> {
  url = NOWHERE;
  await hub.hub.stop();
  between?.();
  await vi.waitFor(() => expect(live.away).toBe(true), { timeout: 15_000 });
  await hub.start();
  await happens();
  asked.length = 0;
  url = hub.hub.url;
  await vi.waitFor(() => expect(live.away).toBe(false), { timeout: 15_000 });
  await settled();
  return asked.filter((path) => path !== '/api/health' && path !== '/api/shop');
}
