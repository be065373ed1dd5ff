import { z } from 'zod';
import type { PrintedFault } from '../fields/fault.ts';
import type { CutOtherWay } from '../marks/cut-other-way.ts';
import type { LostMarks } from '../marks/lost-marks.ts';
import type { AsMarked } from '../measured/as-marked.ts';
import type { Disagreement } from '../measured/disagreements.ts';
import { heldTo } from './held-to.ts';
import { personName } from './marks-api.ts';

const settingValue = z.union([z.string(), z.number()]);

/** A fault as it is told: its figures are in its words. */
const fault = heldTo<PrintedFault>()(z.object({ path: z.string(), code: z.string(), message: z.string() }));

/** GET /jobs answers this. */
export const jobsAnswer = z.object({
  jobs: z.array(
    z.object({
      id: z.string(),
      job: z.string(),
      due: z.string().optional(),
      units: z.enum(['in', 'mm']),
      doors: z.number(),
      parts: z.number(),
      /** Doors that are not finished. A job with none left is not current any more. */
      left: z.number(),
      revision: z.number(),
      /** Of the job as it lies on disk: another job put back under the same revision has another. */
      hash: z.string(),
      /** Why this version makes no plan of it, the first of them: what is shown of it is the last plan that was made. */
      faults: z.array(fault).min(1).optional(),
    }),
  ),
  /** Of this list, as each beat tells it. */
  tag: z.string().optional(),
});
/** A job as the list of jobs shows it. */
export type JobLine = z.infer<typeof jobsAnswer>['jobs'][number];

/** A part by its code, with its door. */
const partOf = z.object({ code: z.string(), door: z.string(), part: z.string() });

/** POST /jobs answers this. */
export const jobSaved = z.object({
  id: z.string(),
  job: z.string(),
  revision: z.number(),
  codesChanged: z.boolean(),
  parts: z.array(partOf),
});

/** A setting that something was cut by and that is another one now. */
const disagreement = heldTo<Disagreement>()(
  z.object({
    code: z.string(),
    door: z.string(),
    part: z.string().optional(),
    stage: z.string(),
    place: z.string().optional(),
    name: z.string(),
    was: settingValue,
    now: settingValue.optional(),
  }),
);

/** What would stand in no plan any more though it was marked: a door, or one part of a door that stays. */
const lostMarks = heldTo<LostMarks>()(
  z.object({ door: z.string(), part: z.string().optional(), marks: z.number() }),
);

/**
 * What a save brings about: settings that something was cut by already and that are others after it, how many there are,
 * and the first of them; the finished doors that such settings are of, which are not among them; and the stickers that
 * were printed with other sizes, how many, and the first of them.
 */
const disagreeing = {
  finished: z.array(z.string()),
  outdated: z.number(),
  stickers: z.array(partOf),
  disagreeing: z.number(),
  disagree: z.array(disagreement),
};

/** A stage of a part that was done and is not among its stages any more. */
const cutOtherWay = heldTo<CutOtherWay>()(
  z.object({ door: z.string(), part: z.string(), stage: z.string() }),
);

/** PUT /jobs/:id answers this: what POST does, what was cut already and no longer agrees, and what has marks and is in the job no more. */
export const jobChanged = jobSaved.extend({
  ...disagreeing,
  lost: z.array(lostMarks),
  /** What was cut in a way that the job has no more: how many stages, and the first of them. */
  cutOtherWay: z.number(),
  otherWay: z.array(cutOtherWay),
});
/** What a save of a changed job brings about, or would. */
export type JobChanged = z.infer<typeof jobChanged>;

/** PUT /jobs/:id and PUT /jobs/:id/measured take this beside their address: with dry=1 they tell what would come of it, and save nothing. */
export const dryRun = z.object({ dry: z.enum(['0', '1']).optional() });

/** PUT /jobs/:id takes this. */
export const jobUpdate = z.strictObject({
  revision: z.number().int().nonnegative(),
  file: z.unknown(),
  by: personName.exactOptional(),
});

const measured = z.record(z.string(), z.unknown());

/** A setting that something was marked by and that is another one since: by the part's code, or the door's name. */
export const asMarked = heldTo<AsMarked>()(
  z.object({
    code: z.string().optional(),
    door: z.string().optional(),
    stage: z.string(),
    seq: z.number(),
    place: z.string().optional(),
    name: z.string(),
    was: settingValue,
  }),
);

/** GET /jobs/:id/file answers this. */
export const jobFileAnswer = z.object({
  id: z.string(),
  revision: z.number(),
  file: z.unknown(),
  measured: measured.optional(),
  asMarked: z.array(asMarked).optional(),
});

/** PUT /jobs/:id/measured takes this: sizes as they came out, read by core, which gives its faults by name. */
export const measuredUpdate = z.strictObject({
  revision: z.number().int().nonnegative(),
  measured,
  by: personName.exactOptional(),
});

/** PUT /jobs/:id/measured answers this: settings that were cut already and no longer agree. */
export const measuredAnswer = z.object({ revision: z.number(), ...disagreeing });
/** What a save of sizes brings about, or would. */
export type ChangeBrings = Omit<z.infer<typeof measuredAnswer>, 'revision'>;

/** 400 with faults. */
export const faultsBody = z.object({
  errors: z.array(fault),
});

/** An `event: job` carries this. */
export const jobEvent = z.object({ id: z.string(), change: z.enum(['added', 'changed', 'removed']) });
