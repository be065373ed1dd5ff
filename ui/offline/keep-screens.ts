import { registered } from './registered.ts';

/**
 * Lets the browser keep the built screens for when the hub is away. Without one that can, a station works until it is loaded
 * anew. False where the page came over a certificate that the browser does not trust: then nothing is to be shown or marked.
 */
export async function keepScreens(): Promise<boolean> {
  if (!import.meta.env.PROD) return true;
  const { kind } = await registered('/service-worker.js', '/');
  return kind !== 'untrusted' || location.protocol !== 'https:';
}
