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
  /** A short sum of the figures that stood on it; left out where that was not kept. */
  says: z.string().optional(),
});
/** One run of stickers that was printed. */
export type PrintedOnce = Readonly<z.infer<typeof printedOnce>>;

/** GET /jobs/:id/printed answers this: for each code, every time it was printed. */
export const printedAnswer = z.object({ codes: z.record(z.string(), z.array(printedOnce)) });

/** POST /jobs/:id/printed takes this, after the browser's own dialog. */
export const printedReport = z.strictObject({ codes, stock, by: personName.optional() });
/** Stickers that a person says were printed. */
export type PrintedReport = Readonly<z.infer<typeof printedReport>>;

/** GET /stickers answers this: of each job with doors to finish, how many stickers are to be printed. */
export const toPrintAnswer = z.object({ jobs: z.array(z.object({ id: z.string(), toPrint: z.number() })) });

/** An `event: print` carries this: stickers of this job left a printer. */
export const printEvent = z.object({ job: z.string() });

/** GET /printers answers this: what can be printed to from the hub's machine. */
export const printerLine = z.object({
  name: z.string(),
  description: z.string().optional(),
  accepting: z.boolean(),
  state: z.enum(['idle', 'printing', 'stopped']),
  /** What it says is wrong with it. */
  reason: z.string().optional(),
});
/** A printer as the office lists it. */
export type PrinterLine = Readonly<z.infer<typeof printerLine>>;
/** The printers that the hub knows of. */
export const printersAnswer = z.object({
  printers: z.array(printerLine),
  /** Why there are none, in words. */
  message: z.string().optional(),
  /** The one of them that printed stickers last, on what, and how many are on a sheet of it. */
  stickers: z.object({ printer: z.string(), stock: z.string(), positions: z.number() }).optional(),
});

/** The papers of a job that are no stickers. */
export const PAPER_KINDS = ['cards', 'templates', 'rods', 'sheet'] as const;
/** A kind of paper that the hub can print, by name. */
export type PaperKind = (typeof PAPER_KINDS)[number];
/** A kind of paper that the hub can print. */
export const paperKind = z.enum(PAPER_KINDS);
/** A size of paper. */
export const paperSize = z.enum(['letter', 'a4']);
/** A size of paper, by name. */
export type PaperSize = z.infer<typeof paperSize>;

/** POST /prints takes this; it is answered with 202 and the print's id. */
export const printRequest = z.strictObject({
  job: z.string().min(1).max(200),
  kind: z.enum(['stickers', 'calibration', ...PAPER_KINDS]),
  stock: stock.optional(),
  symbol: z.enum(['code128', 'datamatrix']).optional(),
  codes: codes.optional(),
  from: z.number().int().min(1).max(9999).optional(),
  paper: paperSize.optional(),
  doors: z.array(z.string().min(1).max(40)).min(1).max(10_000).optional(),
  printer: z.string().min(1).max(200),
  reprint: z.boolean().optional(),
  by: personName.optional(),
});
/** What is to be printed, and where. */
export type PrintRequest = Readonly<z.infer<typeof printRequest>>;
/** The answer to a print that was taken. */
export const printTaken = z.object({ id: z.string() });

/** GET /prints/:id answers this. `made` of `of` stickers or pages are made while the state is `making`. */
export const printState = z.object({
  state: z.enum(['making', 'sending', 'printed', 'failed', 'cancelled']),
  made: z.number(),
  of: z.number(),
  /** Once printed: how many stickers of the sheet it took. A part may take two. */
  stickers: z.number().optional(),
  code: z.string().optional(),
  message: z.string().optional(),
});
/** How far a print is. */
export type PrintState = Readonly<z.infer<typeof printState>>;
