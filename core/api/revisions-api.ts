import { z } from 'zod';
import type { Change } from '../job/what-changed.ts';
import { heldTo } from './held-to.ts';
import { personName } from './marks-api.ts';

const change = heldTo<Change>()(
  z.object({
    mark: z.string().exactOptional(),
    field: z.string(),
    was: z.string().exactOptional(),
    now: z.string().exactOptional(),
  }),
);

/** One save of a job: when, by whom where that is known, and what it changed; the first few things, and how many more. */
export const revisionNote = z.object({
  revision: z.number().int(),
  /** Null where that was not kept yet. */
  at: z.string().nullable(),
  by: personName.exactOptional(),
  /** The revision that it went back to, where it did. */
  back: z.number().int().exactOptional(),
  changes: z.array(change),
  more: z.number().int(),
});
export type RevisionNote = z.infer<typeof revisionNote>;

/** GET /jobs/:id/revisions answers this, the newest first; `kept` are those that can be gone back to. */
export const revisionsAnswer = z.object({
  /** The one that stands. */
  current: z.number(),
  revisions: z.array(revisionNote.extend({ kept: z.boolean() })),
});

/** POST /jobs/:id/revisions/:revision/restore takes this: the revision seen, which is saved over. */
export const goBack = z.strictObject({
  revision: z.number().int().nonnegative(),
  by: personName.exactOptional(),
});
