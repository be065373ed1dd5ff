import { z } from 'zod';

/** GET /bin answers this: what was put there last stands first, each with what would go with it for good. */
export const binAnswer = z.object({
  jobs: z.array(
    z.object({
      id: z.string(),
      job: z.string(),
      due: z.string().optional(),
      doors: z.number(),
      parts: z.number(),
      /** When it was put there. */
      binned: z.string(),
      /** Marks that stand, doors with one that are not finished, finished doors, stickers that were printed. */
      marks: z.number(),
      begun: z.number(),
      finished: z.number(),
      printed: z.number(),
    }),
  ),
});
/** A job as the bin's list shows it. */
export type BinLine = z.infer<typeof binAnswer>['jobs'][number];

/** POST /bin/:id/restore answers this. */
export const binRestored = z.object({ id: z.string(), job: z.string(), revision: z.number() });
