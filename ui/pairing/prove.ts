import { registered } from '../offline/registered.ts';

/** So long the worker has to begin and to answer. */
const PATIENCE_MS = 10_000;
/** A worker that could not be had may only be late, where many pages ask at once: not every browser says that it is for the certificate. */
const TRIES = 4;

/** What this page's worker answers, which it can only where the browser trusts the shop's certificate; null where it does not. */
export async function prove(ask: string): Promise<string | null> {
  const asked = encodeURIComponent(ask);
  // A scope of its own: another page of this browser that asks at the same time has another worker.
  let came = await registered(`/pairing/worker.js?ask=${asked}`, `/pairing/${asked}`);
  for (let tries = 1; came.kind === 'away' && tries < TRIES; tries += 1)
    came = await registered(`/pairing/worker.js?ask=${asked}`, `/pairing/${asked}`);
  if (came.kind !== 'registered') return null;
  const { registration } = came;
  const worker = registration.installing ?? registration.waiting ?? registration.active;
  if (worker === null) return null;
  const line = new MessageChannel();
  const answered = new Promise<string | null>((told) => {
    line.port1.onmessage = ({ data }: MessageEvent<unknown>) => told(typeof data === 'string' ? data : null);
    setTimeout(() => told(null), PATIENCE_MS);
  });
  worker.postMessage(null, [line.port2]);
  const proof = await answered;
  // It was there for this alone: the station has a worker of its own.
  await registration.unregister();
  return proof;
}
