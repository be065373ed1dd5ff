import { z } from 'zod';
import { STATIONS } from '../stages/stations.ts';
import { personName } from './marks-api.ts';

const station = z.enum(STATIONS);
const stage = z
  .string()
  .min(1)
  .max(40)
  .regex(/^[a-z0-9-]+$/);
/** By how many milliseconds a device's clock is ahead of the hub's; behind it, below 0. No clock is off by more than 300 years. */
const clock = z.number().int().min(-1e13).max(1e13);
/** How many of its marks a device has not sent yet, or was refused. */
const unsent = z.number().int().min(0).max(1e6);

/** From so many milliseconds on a clock is told to be wrong. */
const OFF_MS = 30_000;

/** Is a clock that is off by so much to be told of? What is recorded by it carries a wrong time. */
export function isOff(clock: number | undefined): clock is number {
  return clock !== undefined && Math.abs(clock) >= OFF_MS;
}

/** PUT /screens takes this: what a page shows now; no station where it shows none, or nobody can see it. */
export const screenShows = z.strictObject({
  /** The page, by a name that it gave itself when it was loaded. */
  screen: z.uuid(),
  station: station.nullable(),
  /** The badge of who works there. */
  by: personName.exactOptional(),
  /** The part whose set-up is shown, by the code on its sticker. */
  code: z.string().min(1).max(40).exactOptional(),
  stage: stage.exactOptional(),
  unsent: unsent.exactOptional(),
  clock: clock.exactOptional(),
});
/** What a page says that it shows. */
export type ScreenShows = Readonly<z.infer<typeof screenShows>>;

/** PUT /screens answers this: the hub's time in milliseconds since 1970, and where over the network the page is that gives out the shop's certificate. */
export const screenTold = z.object({ now: z.number(), trust: z.string().nullable() });

/** A station as it is seen at the hub. */
const seen = z.object({
  station,
  /** What the device is called; null at the shop computer itself. */
  device: z.string().nullable(),
  /** Does a screen show it, that the hub hears of? */
  here: z.boolean(),
  /** Since when it is so. */
  since: z.string(),
  by: z.string().optional(),
  /** The part, by its code, and where it belongs; those are left out where no job has it. */
  code: z.string().optional(),
  job: z.string().optional(),
  door: z.string().optional(),
  part: z.string().optional(),
  stage: z.string().optional(),
  unsent: unsent.optional(),
  clock: clock.optional(),
});
/** One station at one screen: who is there, what is shown, or since when it is away. */
export type StationSeen = z.infer<typeof seen>;

/** GET /stations answers this: every station that a screen shows or showed, in the order of the shop. */
export const stationsAnswer = z.object({ stations: z.array(seen) });
