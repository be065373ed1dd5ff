import { z } from 'zod';
import { isPlanStage } from '../plan/is-plan-stage.ts';
import { isPartName } from '../plan/part-name.ts';
import type { PlanStage } from '../plan/plan.ts';
import type { PrintedDoor, PrintedPlan } from '../plan/printed-plan.ts';
import { STATIONS } from '../stages/stations.ts';

/** A station by its id. */
export const station = z.enum(STATIONS);
const settingValue = z.union([z.string(), z.number()]);
const settings = z.record(z.string(), settingValue);
const whyTable = z.record(z.string(), z.object({ from: z.string(), datum: z.string(), reason: z.string() }));
const allowTable = z.record(
  z.string(),
  z.object({
    less: z.string(),
    more: z.string(),
    lessBy: z.string().exactOptional(),
    moreBy: z.string().exactOptional(),
  }),
);
const explained = { why: whyTable.exactOptional(), allow: allowTable.exactOptional() };
const place = z.object({ at: z.string(), settings, ...explained });
const setUp = { stage: z.string(), station, settings, places: z.array(place).exactOptional() };

type SetUp = Pick<PlanStage, 'stage' | 'station' | 'settings' | 'places'>;

/** What is to be set for a stage: of a kind that there is, with all of its settings. */
export const stageSetUp = z
  .object(setUp)
  .transform((read, context): SetUp => (isPlanStage(read) ? read : refuse(context, 'stage')));

/** A stage of a plan. */
const planStage = z
  .object({ ...setUp, after: z.array(z.string()), ...explained })
  .transform((read, context): PlanStage => (isPlanStage(read) ? read : refuse(context, 'stage')));

/** The name of a part. */
const partName = z.string().transform((text, context) => (isPartName(text) ? text : refuse(context, 'part')));

function refuse(context: z.core.$RefinementCtx, expected: string): never {
  context.addIssue({ code: 'custom', message: expected });
  return z.NEVER;
}

const ends = z.object({ bottom: z.string(), top: z.string() });
const sides = z.object({ left: z.string(), right: z.string() });
const allSides = z.object({ ...sides.shape, ...ends.shape });

/** GET /jobs/:id answers this: a plan, as printed. What it reads is what core prints, held by the compiler. */
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
        trim: allSides.exactOptional(),
        trimEachSide: z.string().exactOptional(),
        trimEachEnd: z.string().exactOptional(),
        survey: z
          .object({
            closure: z.string(),
            base: z.enum(['width', 'height']),
            takeOff: z.object({ left: ends, right: ends, bottom: sides, top: sides }),
          })
          .exactOptional(),
      }),
      parts: z.array(
        z.object({
          part: partName,
          code: z.string(),
          length: z.string(),
          width: z.string(),
          thickness: z.string(),
          stages: z.array(planStage),
        }),
      ),
      stages: z.array(planStage),
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
}) satisfies z.ZodType<PrintedPlan>;

/** GET /jobs/:id/doors/:door answers this: one door of a plan. */
export const doorAnswer = planAnswer.shape.doors.element satisfies z.ZodType<PrintedDoor>;

/** GET /jobs/:id/doors answers this: the doors of a plan in its order, so that no more has to be asked for than one of each tag. */
export const doorsAnswer = z.object({
  format: z.literal(1),
  id: z.string(),
  job: z.string(),
  units: z.enum(['in', 'mm']),
  doors: z.array(
    z.object({
      door: z.string(),
      /** A sum over all that the door says but its name and its codes. */
      tag: z.string(),
      /** Of its live parts, in their order. */
      codes: z.array(z.string()),
    }),
  ),
});
/** The doors of a plan by name, codes and likeness. */
export type DoorsAnswer = Readonly<z.infer<typeof doorsAnswer>>;
