import { registered } from './registered.ts';

/** A hub that is away for less is most often one that is started anew. */
const FIRST_MS = 10_000;
const AGAIN_MS = 60_000;
/** A scope in which nothing is: its worker is there to be asked for, and for nothing else. */
const SCOPE = '/trusted/';

/** Does the browser let a worker be registered over this hub's certificate? Where it does not trust that it says so, which a request that fails does not. */
async function trusts(): Promise<boolean> {
  const came = await registered('/service-worker.js?trusted', SCOPE);
  if (came.kind === 'registered') await came.registration.unregister();
  return came.kind !== 'untrusted';
}

/**
 * Finds out why the hub does not answer: a device that trusts the shop's certificate no more goes on with the screens that it
 * kept, and to it the hub is as away as one that is switched off.
 */
class TrustLost {
  /** The browser has said that it does not trust the certificate. */
  lost = $state(false);
  /** The hub is away for so long that it may be that, in a browser that does not say so. */
  perhaps = $state(false);

  /** Looks for as long as the hub is away, over the network alone; what it gives ends that. */
  watch(away: boolean): () => void {
    this.lost = false;
    this.perhaps = false;
    if (!away || location.protocol !== 'https:' || !('serviceWorker' in navigator)) return () => undefined;
    let over = false;
    const look = async () => {
      const lost = !(await trusts().catch(() => true));
      if (!over) this.lost = lost;
    };
    const first = setTimeout(() => void look(), FIRST_MS);
    const later = setInterval(() => {
      this.perhaps = true;
      void look();
    }, AGAIN_MS);
    return () => {
      over = true;
      clearTimeout(first);
      clearInterval(later);
    };
  }
}

export const trustLost = new TrustLost();
