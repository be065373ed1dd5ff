/** What is asked of the browser; none has to have it (Screen Wake Lock API, W3C). */
export interface Waking {
  readonly wakeLock?: { request(kind: 'screen'): Promise<{ release(): Promise<void> }> };
}

/**
 * Keeps the screen from going dark until what it returns is called. A browser lets go of it by itself when another page is
 * shown, so it is asked again when this one is back. Where a browser cannot, or may not now, the screen does as it would.
 */
export function keepAwake(
  waking: Waking = navigator,
  page: Pick<Document, 'visibilityState' | 'addEventListener' | 'removeEventListener'> = document,
): () => void {
  const { wakeLock } = waking;
  if (wakeLock === undefined) return () => undefined;
  let over = false;
  let held: { release(): Promise<void> } | null = null;
  const letGo = (lock: typeof held) => void lock?.release().catch(() => undefined);
  const ask = async (): Promise<void> => {
    if (page.visibilityState !== 'visible') return;
    const came = await wakeLock.request('screen').catch(() => null);
    // It may come when it is wanted no more, or after another.
    if (over) return letGo(came);
    letGo(held);
    held = came;
  };
  const onVisible = () => void ask();
  page.addEventListener('visibilitychange', onVisible);
  void ask();
  return () => {
    over = true;
    page.removeEventListener('visibilitychange', onVisible);
    letGo(held);
    held = null;
  };
}
