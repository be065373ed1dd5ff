import { z } from 'zod';
import { station, stageSetUp } from './plan-api.ts';
import type { BoardDoor } from '../marks/board.ts';
import { type AcceptedMark, type JobProgress, type Mark, REFUSALS } from '../marks/mark.ts';
import type { StageState } from '../marks/stage-state.ts';
import { heldTo } from './held-to.ts';

const instant = z.iso.datetime({ offset: true });
/** Who marks: as the badge or the list of people has it. */
export const personName = z
  .string()
  .min(1)
  .max(60)
  .regex(/^[^\p{Cc}]*$/u);

/** POST /marks takes this. */
export const markRequest = heldTo<Mark>()(
  z.strictObject({
    id: z.uuid(),
    code: z.string().min(1).max(40),
    station,
    stage: z
      .string()
      .min(1)
      .max(40)
      .regex(/^[a-z0-9-]+$/),
    mark: z.enum(['done', 'undo', 'spoiled', 'proved']),
    by: personName.exactOptional(),
    reason: z
      .string()
      .max(200)
      .regex(/^[^\p{Cc}]*$/u)
      .exactOptional(),
    at: instant,
  }),
);

/** How far a stage of a part is: done, the next one, or waiting for others. */
export const stageState = heldTo<StageState>()(
  z.object({ stage: z.string(), station, state: z.enum(['done', 'next', 'waiting']) }),
);
const nextStage = z.object({ stage: z.string(), station }).nullable();

/** POST /marks answers this. */
export const markAnswer = z.object({
  code: z.string(),
  stages: z.array(stageState),
  next: nextStage,
  replacement: z.string().optional(),
});

/** What the API says when it refuses. */
export const refusal = z.object({
  code: z.string(),
  message: z.string(),
  missing: z.array(z.string()).optional(),
  station: z.string().optional(),
  replacedBy: z.string().optional(),
});
/** What the hub says of a mark that it does not take. */
export type RefusalBody = z.infer<typeof refusal>;
/** Why a mark is not taken, by its stable code. */
export const refusalCode = z.enum(REFUSALS);

/** GET /parts/:code answers this. */
export const partAnswer = z.object({
  code: z.string(),
  job: z.object({ id: z.string(), name: z.string() }),
  door: z.string(),
  mark: z.string(),
  part: z.string(),
  length: z.string(),
  width: z.string(),
  thickness: z.string(),
  stages: z.array(stageState),
  here: stageSetUp.nullable(),
  next: nextStage,
  replacedBy: z.string().optional(),
});
/** What the hub answers to a part’s code. */
export type PartAnswer = z.infer<typeof partAnswer>;

const done = z.object({
  seq: z.number(),
  id: z.string(),
  at: z.string(),
  station,
  by: z.string().exactOptional(),
});
const doneTable = z.record(z.string(), done);

/** GET /jobs/:id/progress answers this. */
export const jobProgress = heldTo<JobProgress>()(
  z.object({
    job: z.string(),
    seq: z.number(),
    parts: z.record(
      z.string(),
      z.object({
        code: z.string(),
        door: z.string(),
        part: z.string(),
        number: z.number(),
        done: doneTable,
        proved: doneTable,
        spoiled: done.extend({ stage: z.string(), reason: z.string().exactOptional() }).exactOptional(),
        replacedBy: z.string().exactOptional(),
      }),
    ),
    doors: z.record(z.string(), z.object({ done: doneTable })),
  }),
);

/** An `event: mark` carries this. */
export const acceptedMark = heldTo<AcceptedMark>()(
  z.object({
    seq: z.number(),
    received: z.string(),
    job: z.string(),
    door: z.string(),
    part: z.string(),
    mark: markRequest,
    replacement: z.object({ code: z.string(), number: z.number() }).exactOptional(),
  }),
);

const boardDoor = heldTo<BoardDoor>()(
  z.object({
    job: z.string(),
    door: z.string(),
    mark: z.string(),
    stage: z.string(),
    done: z.number(),
    of: z.number(),
    parts: z.array(
      z.object({
        part: z.string(),
        code: z.string(),
        stage: z.string().nullable(),
        done: z.number(),
        of: z.number(),
      }),
    ),
  }),
);

/** GET /board answers this. */
export const boardAnswer = z.object({ doors: z.array(boardDoor) });
