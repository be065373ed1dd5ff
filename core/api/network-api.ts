import { z } from 'zod';
import { STATIONS } from '../stages/stations.ts';

const name = z.string().trim().min(1).max(40);
/** A name that is given anew; none that was given before is refused. */
const newName = name.regex(/^[^\p{Cc}]*$/u);
const station = z.enum(STATIONS);

/** GET /pairing answers this: who this device is, or nobody; what its service worker is to be asked by; in what language. */
export const pairingAnswer = z.object({
  paired: z.object({ name, station }).nullable(),
  /** False at the hub's own machine, which needs no pairing. */
  needed: z.boolean(),
  ask: z.string(),
  language: z.string().optional(),
});

/** For so long after it was made an offer to pair a device is good. */
export const OFFER_LASTS_MS = 10 * 60_000;

/** POST /pairing takes this: what the office shows (scanned, or its eight characters), and what the page's service worker answered. */
export const pairingRequest = z.strictObject({
  secret: z.string().min(1).max(60),
  ask: z.string().max(100),
  proof: z.string().max(100),
  name: newName,
  station,
});

/** POST /pairing answers this. */
export const pairedAnswer = z.object({ name, station });

/** A device as the office sees it; `here` is the one that asks. */
const device = z.object({
  id: z.string(),
  name,
  station,
  since: z.string(),
  seen: z.string(),
  here: z.boolean(),
  /** Is a page of it open now, that the hub hears of? */
  online: z.boolean(),
  /** By how many milliseconds its clock is ahead of the hub's, where it has said so since the hub was started. */
  clock: z.number().optional(),
});
/** A paired device. */
export type PairedDevice = z.infer<typeof device>;

/** How it stands with the network: off; on; wanted, but no PIN is set, this machine is in no private network, or it could not be opened. */
export const networkState = z.enum(['off', 'on', 'no-pin', 'no-address', 'failed']);
export type NetworkState = z.infer<typeof networkState>;

/** A square symbol, a text of 0 and 1 a row. */
const symbol = z.array(z.string());

/** GET and PUT /network answer this. */
export const networkAnswer = z.object({
  state: networkState,
  /** Why it could not be opened. */
  reason: z.string().nullable(),
  /** Whether the program was told from outside, so that the office cannot choose. */
  told: z.boolean(),
  /** Is a PIN set? */
  pin: z.boolean(),
  /** Where screens are served, with a picture of it for a device that knows another address, and where the page with the shop's certificate is. */
  addresses: z.array(z.object({ screens: z.string(), trust: z.string().nullable(), symbol })),
  /** Where screens are served by the name that stays when addresses change; null where it does not lead here. */
  named: z.object({ screens: z.string(), symbol }).nullable(),
  /** SHA-256 of the shop's certificate, in pairs of hexadecimal digits. */
  fingerprint: z.string().nullable(),
  devices: z.array(device),
});
/** What the office knows of the network. */
export type Network = z.infer<typeof networkAnswer>;

/** PUT /network takes this. */
export const networkUpdate = z.strictObject({ on: z.boolean() });

/** POST /network/offers answers this: eight characters to type, and for each address what is to be scanned; the one by name, where that leads here, first. */
export const offerAnswer = z.object({
  code: z.string(),
  until: z.string(),
  at: z.array(
    z.object({
      /** Is it by the name that stays when addresses change? */
      named: z.boolean(),
      pairing: z.string(),
      pairingSymbol: symbol,
      trust: z.string().nullable(),
      trustSymbol: symbol.nullable(),
    }),
  ),
});
/** One offered pairing. */
export type Offer = z.infer<typeof offerAnswer>;
