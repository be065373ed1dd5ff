import { z } from 'zod';
import { place, station } from './marks-api.ts';

const settingValue = z.union([z.string(), z.number()]);
const settings = z.record(z.string(), settingValue);
const whyTable = z.record(z.string(), z.object({ from: z.string(), reason: z.string() }));
const stage = z.object({
  stage: z.string(),
  station,
  settings,
  places: z.array(place).optional(),
  after: z.array(z.string()),
  why: whyTable.optional(),
});
const ends = z.object({ bottom: z.string(), top: z.string() });
const sides = z.object({ left: z.string(), right: z.string() });

/** GET /jobs/:id answers this: a plan, as printed. */
export const planAnswer = z.object({
  format: z.literal(1),
  id: z.string(),
  job: z.string(),
  units: z.enum(['in', 'mm']),
  doors: z.array(
    z.object({
      door: z.string(),
      mark: z.string(),
      values: z.object({
        sightWidth: z.string(),
        shoulderToShoulder: z.string(),
        sightHeights: z.array(z.string()),
        finishedWidth: z.string(),
        finishedHeight: z.string(),
        trimEachSide: z.string(),
        trimEachEnd: z.string(),
        survey: z
          .object({
            closure: z.string(),
            base: z.enum(['width', 'height']),
            takeOff: z.object({ left: ends, right: ends, bottom: sides, top: sides }),
          })
          .optional(),
      }),
      parts: z.array(
        z.object({
          part: z.string(),
          code: z.string(),
          length: z.string(),
          width: z.string(),
          thickness: z.string(),
          stages: z.array(stage),
        }),
      ),
      stages: z.array(stage),
      notes: z.array(
        z.object({
          id: z.string(),
          level: z.enum(['warning', 'advice']),
          path: z.string(),
          message: z.string(),
          figures: z.record(z.string(), settingValue),
        }),
      ),
    }),
  ),
});

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
    }),
  ),
});
/** A job as the list of jobs shows it. */
export type JobLine = z.infer<typeof jobsAnswer>['jobs'][number];

/** POST /jobs and PUT /jobs/:id answer this. */
export const jobSaved = z.object({
  id: z.string(),
  job: z.string(),
  revision: z.number(),
  codesChanged: z.boolean(),
  parts: z.array(z.object({ code: z.string(), door: z.string(), part: z.string() })),
});

/** PUT /jobs/:id takes this. */
export const jobUpdate = z.strictObject({ revision: z.number().int().nonnegative(), file: z.unknown() });

const measured = z.record(z.string(), z.unknown());

/** GET /jobs/:id/file answers this. */
export const jobFileAnswer = z.object({
  id: z.string(),
  revision: z.number(),
  file: z.unknown(),
  measured: measured.optional(),
});

/** PUT /jobs/:id/measured takes this: sizes as they came out, read by core, which gives its faults by name. */
export const measuredUpdate = z.strictObject({ revision: z.number().int().nonnegative(), measured });

/** PUT /jobs/:id/measured answers this: settings that were cut already and no longer agree. */
export const measuredAnswer = z.object({
  revision: z.number(),
  disagree: z.array(
    z.object({
      code: z.string(),
      door: z.string(),
      part: z.string(),
      stage: z.string(),
      place: z.string().optional(),
      name: z.string(),
      was: settingValue,
      now: settingValue,
    }),
  ),
});

/** 400 with faults. */
export const faultsBody = z.object({
  errors: z.array(z.object({ path: z.string(), code: z.string(), message: z.string() })),
});

/** An `event: job` carries this. */
export const jobEvent = z.object({ id: z.string(), change: z.enum(['added', 'changed', 'removed']) });
