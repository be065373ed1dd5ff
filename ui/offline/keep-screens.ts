import { SCREENS_NAME } from '#core/api/screens-named.ts';
import { InHand } from './in-hand.ts';
import { newerScreens } from './newer-screens.ts';
import { registered } from './registered.ts';

const PATIENCE_MS = 8000;

/**
 * Lets the browser keep the built screens for when the hub is away, and load them anew once the hub has newer ones. Without a
 * browser that can keep them, a station works until it is loaded anew. False where the page came over a certificate that the
 * browser does not trust: then nothing is to be shown or marked.
 */
export async function keepScreens(): Promise<boolean> {
  if (!import.meta.env.PROD) return true;
  const own = document.querySelector<HTMLMetaElement>(`meta[name="${SCREENS_NAME}"]`)?.content;
  if (own !== undefined) {
    newerScreens.start({
      own,
      hand: new InHand(window),
      // Reading the name of a storage that is denied throws.
      memory: {
        getItem: (name) => sessionStorage.getItem(name),
        setItem: (name, value) => sessionStorage.setItem(name, value),
      },
      page: pageNow,
      reload: () => location.reload(),
    });
  }
  const { kind } = await registered('/service-worker.js', '/');
  return kind !== 'untrusted' || location.protocol !== 'https:';
}

/** The page as the hub has it: what is asked for by a script no worker answers in the hub's place. */
async function pageNow(): Promise<string | null> {
  try {
    const answer = await fetch('/', { cache: 'no-store', signal: AbortSignal.timeout(PATIENCE_MS) });
    return answer.ok ? await answer.text() : null;
  } catch {
    return null;
  }
}
