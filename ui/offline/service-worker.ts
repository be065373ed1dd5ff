/**
 * Keeps the built screens in the browser, so that a station can be loaded anew while the hub is away. The hub comes
 * first whenever it answers; its API is never kept.
 */
interface Waiting {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Waiting {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Worker {
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
  addEventListener(kind: 'install' | 'activate', listen: (event: Waiting) => void): void;
  addEventListener(kind: 'fetch', listen: (event: Fetching) => void): void;
}

const KEPT = 'screens';
const PAGE = '/';
const PAIRING = '/pairing';
/** What the build made, written by the build. */
const LIST = '/screens.json';
/** Large and seldom wanted: the camera's decoder is kept once it has been used. */
const ONLY_WHEN_USED = /\.wasm$/;
/** A hub on another machine may be cut off without a word; after this long the kept page is shown. */
const PATIENCE_MS = 3000;

const worker = globalThis as unknown as Worker;

worker.addEventListener('install', (event) =>
  event.waitUntil(keepScreens().then(() => worker.skipWaiting())),
);
worker.addEventListener('activate', (event) => event.waitUntil(worker.clients.claim()));
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin || pathname.startsWith('/api/')) return;
  // Where a device is paired the kept page would show what nobody may see yet: a hub that is slow is waited for.
  if (pathname === PAIRING) return;
  if (request.mode === 'navigate') event.respondWith(page(event));
  else if (pathname.startsWith('/assets/')) event.respondWith(asset(request));
});

async function page(event: Fetching): Promise<Response> {
  try {
    const answer = await fetch(event.request, { signal: AbortSignal.timeout(PATIENCE_MS) });
    event.waitUntil(keepScreens().catch(() => undefined));
    return answer;
  } catch (away) {
    const kept = await caches.match(PAGE);
    if (kept === undefined) throw away;
    return kept;
  }
}

/** An asset's name carries a hash of what is in it, so a kept one is always right. */
async function asset(request: Request): Promise<Response> {
  const kept = await caches.match(request.url);
  if (kept !== undefined) return kept;
  const answer = await fetch(request);
  if (answer.ok) await (await caches.open(KEPT)).put(request.url, answer.clone());
  return answer;
}

/** Fetches what is new, then the page that needs it, and only then lets go of what is not needed any more. */
async function keepScreens(): Promise<void> {
  const answer = await fetch(LIST, { cache: 'no-store' });
  // Who is paired no more keeps what there is.
  if (!answer.ok) throw new Error(`the list of screens was refused (${answer.status})`);
  const list: unknown = await answer.json();
  const names = Array.isArray(list) ? list.filter((name) => typeof name === 'string') : [];
  const cache = await caches.open(KEPT);
  const kept = new Set((await cache.keys()).map(({ url }) => new URL(url).pathname));
  await cache.addAll(names.filter((name) => !kept.has(name) && !ONLY_WHEN_USED.test(name)));
  await cache.add(new Request(PAGE, { cache: 'no-store' }));
  for (const name of kept) if (name !== PAGE && !names.includes(name)) await cache.delete(name);
}
