/** What came of a service worker: it is there; the browser does not trust what it comes over; or it could not be had just now. */
export type Registered =
  | { readonly kind: 'registered'; readonly registration: ServiceWorkerRegistration }
  | { readonly kind: 'untrusted' | 'away' };

/** So long a worker is waited for that does not come. */
const PATIENCE_MS = 5000;

/**
 * Registers a service worker. Over a certificate that a browser does not trust it registers none, even where somebody has
 * clicked through its warning: that is how a page knows. A browser that has no workers here, as in a private window, keeps
 * no marks while the hub is away either.
 */
export async function registered(script: string, scope: string): Promise<Registered> {
  if (!('serviceWorker' in navigator)) return { kind: 'untrusted' };
  const late = new Promise<Registered>((told) => setTimeout(() => told({ kind: 'away' }), PATIENCE_MS));
  return Promise.race([late, attempted(script, scope)]);
}

async function attempted(script: string, scope: string): Promise<Registered> {
  try {
    return {
      kind: 'registered',
      registration: await navigator.serviceWorker.register(script, { scope }),
    };
  } catch (error) {
    return { kind: error instanceof DOMException && error.name === 'SecurityError' ? 'untrusted' : 'away' };
  }
}
