import { z } from 'zod';
import type { Moisture } from '../job/moisture.ts';
import type { Ways } from '../job/ways.ts';
import type { Rounding } from '../length/reading.ts';
import { heldTo } from './held-to.ts';
import type { WordKey } from '../words/say.ts';
import { LANGUAGES } from '../words/languages.ts';
import { personName } from './marks-api.ts';

const word = z
  .string()
  .max(60)
  .regex(/^[^\p{Cc}]*$/u);
const lengths = z.array(z.string());

/** What a badge carries: P- and up to twenty letters or digits. */
const badge = z.string().regex(/^P-[A-Z0-9]{1,20}$/);

/** Somebody who works here. A badge says who, never what is allowed. */
const person = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]{1,40}$/),
  name: personName,
  badge,
});

/** How values are shown. */
const rounding = heldTo<Rounding>()(
  z.strictObject({
    denominator: z.union([z.literal(16), z.literal(32), z.literal(64)]),
    places: z.union([z.literal(1), z.literal(2), z.literal(3)]),
    half: z.literal(true).optional(),
  }),
);

/** What a scanner sends before and after a code. */
const scanner = z.strictObject({ prefix: z.string().max(8), suffix: z.string().max(8) });

/** How wide a station's screen is, so that numerals can be given a size in the hand's measure. */
const screen = z.strictObject({ screenWidthMm: z.number().min(50).max(5000).optional() });

/** How often a backup is made, and how many are kept. */
const backup = z.strictObject({
  everyHours: z.number().int().min(1).max(720),
  keep: z.number().int().min(1).max(1000),
});

/** The shop's tools, every field given, lengths in the shop's units. */
const printedProfile = z.object({
  format: z.literal(1),
  units: z.enum(['in', 'mm']),
  chisels: lengths,
  dadoWidths: lengths,
  blade: z.object({
    diameter: z.string(),
    greatestHeight: z.string(),
    ripHeight: z.string().optional(),
  }),
  drums: lengths,
  bearingRadius: z.string(),
  slidingFit: z.string(),
  panelBand: z.string(),
  ways: heldTo<Ways>()(z.object({ strip: z.enum(['notch', 'rip']), groove: z.enum(['saw', 'router']) })),
  stripStation: z.string(),
  moisture: heldTo<Moisture>()(z.object({ atBuild: z.number(), low: z.number(), high: z.number() })),
  /** A screen may remember a shop from before these were asked for. */
  tolerances: z
    .object({ fence: z.string(), stop: z.string(), height: z.string(), milling: z.string() })
    .optional(),
  stocks: z.record(z.string(), z.unknown()).optional(),
});
/** The shop's tools as a file holds them. */
export type PrintedProfile = z.infer<typeof printedProfile>;

const fields = {
  name: word,
  units: z.enum(['in', 'mm']),
  /** The language of its screens, stickers and papers; English where it is left out. */
  language: z.enum(LANGUAGES).optional(),
  people: z
    .array(person)
    .max(200)
    .refine(
      unlike(({ id }) => id),
      'api.shop.id-twice' satisfies WordKey,
    )
    .refine(
      unlike((each) => each.badge),
      'api.shop.badge-twice' satisfies WordKey,
    ),
  rounding,
  stations: z.record(z.string().max(40), screen),
  scanner,
  backup,
};

/**
 * What PUT /shop takes as the shop. The profiles are read by core, which gives their faults by name: the tools in the
 * shop's units, and those for jobs in the other ones; left out, they stay as they are.
 */
export const shopFile = z.strictObject({
  ...fields,
  profile: z.record(z.string(), z.unknown()),
  otherProfile: z.record(z.string(), z.unknown()).optional(),
});
/** The shop as it is kept in its file. */
export type ShopFile = z.infer<typeof shopFile>;

/** PUT /shop takes this. */
export const shopUpdate = z.strictObject({ revision: z.number().int().nonnegative(), shop: shopFile });

/** GET /shop and PUT /shop answer this. */
export const shopAnswer = z.object({
  revision: z.number(),
  ...fields,
  profile: printedProfile,
  otherProfile: printedProfile,
});
/** The shop as the office reads and writes it. */
export type Shop = z.infer<typeof shopAnswer>;

function unlike(key: (each: z.infer<typeof person>) => string) {
  return (all: readonly z.infer<typeof person>[]) => new Set(all.map(key)).size === all.length;
}
