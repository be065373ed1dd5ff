import { z } from 'zod';

/** A stock of stickers as the office lists it. */
export const stockLine = z.object({
  name: z.string(),
  kind: z.enum(['sheet', 'roll']),
  /** Its sizes in words, in its own units. */
  sizes: z.string(),
  /** How many stickers are on a page: the positions from which a part-used one can begin. */
  positions: z.number(),
  /** True for one that the shop added to the built-in ones. */
  own: z.boolean(),
});
/** A stock of stickers, by name and sizes. */
export type StockLine = Readonly<z.infer<typeof stockLine>>;

/** GET /stocks answers this: the built-in stocks, then the shop's own. */
export const stocksAnswer = z.object({ stocks: z.array(stockLine) });
