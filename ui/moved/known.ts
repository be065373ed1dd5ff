import { z } from 'zod';
import { screenMemory } from '../screen-memory.ts';

const REMEMBERED = 'shoulderline.moved';
/** Addresses that are tried when the hub does not answer at this one. */
const MOST_ADDRESSES = 6;

const knownShape = z.object({ device: z.string(), token: z.string(), addresses: z.array(z.string()) });
/** By what the hub knows this device, the token to send by from here, and where else the hub was got, the newest first. */
export type Known = Readonly<z.infer<typeof knownShape>>;

/** What this page knows; null at the hub's own machine, and before the hub has told it. */
export function known(): Known | null {
  try {
    const read = knownShape.safeParse(JSON.parse(screenMemory.getItem(REMEMBERED) ?? 'null'));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** Remembers it over a restart, with the addresses that were known before. */
export function keepKnown({ device, token, addresses }: Known): void {
  const all = [...new Set([...addresses, ...(known()?.addresses ?? [])])].filter(
    (each) => each !== location.origin,
  );
  const kept: Known = { device, token, addresses: all.slice(0, MOST_ADDRESSES) };
  screenMemory.setItem(REMEMBERED, JSON.stringify(kept));
}
