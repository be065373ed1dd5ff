import { z } from 'zod';
import { personName } from './marks-api.ts';

const stock = z.string().min(1).max(60);
const codes = z.array(z.string().min(1).max(40)).min(1).max(100_000);

/** One time that a sticker left a printer. */
export const printedOnce = z.object({
  at: z.string(),
  stock: z.string(),
  printer: z.string().optional(),
  by: z.string().optional(),
  reprint: z.boolean(),
});
export type PrintedOnce = Readonly<z.infer<typeof printedOnce>>;

/** GET /jobs/:id/printed answers this: for each code, every time it was printed. */
export const printedAnswer = z.object({ codes: z.record(z.string(), z.array(printedOnce)) });

/** POST /jobs/:id/printed takes this, after the browser's own dialog. */
export const printedReport = z.strictObject({ codes, stock, by: personName.optional() });
