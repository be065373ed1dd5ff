import { z } from 'zod';
import { station } from '#core/api/plan-api.ts';
import { partCode } from '#core/codes/part-code.ts';
import { MOST_DOORS } from '#core/job/read-job.ts';
import { isPlanStage } from '#core/plan/is-plan-stage.ts';
import { isPartName } from '#core/plan/part-name.ts';
import type { Plan, PlanDoor } from '#core/plan/plan.ts';
import { speakDoors } from '#core/telling/speak-plan.ts';
import { allowPlanOf } from './plan-limit.ts';

/** The form of these lines. */
const PLAN_FORMAT = 1;

const text = z.string().max(2000);
const settings = z.record(z.string(), z.union([z.string(), z.number()]));
const stages = z.array(
  z
    .looseObject({
      stage: text,
      station,
      settings,
      places: z.array(z.looseObject({ at: text, settings })).optional(),
      after: z.array(text),
    })
    .refine((stage) => isPlanStage(stage)),
);
const aboutPlan = z.object({
  plan: z.object({
    format: z.literal(PLAN_FORMAT),
    job: text,
    units: z.enum(['in', 'mm']),
    doors: z.int().min(0).max(MOST_DOORS),
  }),
});
const doorsAlike = z.object({
  alike: z.object({
    mark: text,
    /** Runs of doors: the place of the first in the plan, its number within the mark, and how many follow each other. */
    runs: z.array(z.tuple([z.int().min(0), z.int().min(1), z.int().min(1).max(MOST_DOORS)])),
    values: z.looseObject({}),
    parts: z.array(
      z.looseObject({
        part: text.refine(isPartName),
        length: text,
        width: text,
        thickness: text,
        stages,
      }),
    ),
    stages,
    notes: z.array(
      z.looseObject({ id: text, level: z.enum(['warning', 'advice']), path: text, message: text }),
    ),
  }),
});
/** A line of a kept plan, as it lies in its file and in an archive. */
export const planLine = z.union([aboutPlan, doorsAlike]);
export type PlanLine = Readonly<z.infer<typeof planLine>>;

/**
 * A plan in few lines: doors that are alike but for their codes stand in one, and codes follow from the names. Its notes are
 * kept in English words, as they always were.
 */
export function* linesOfPlan(plan: Plan): Generator<PlanLine> {
  const { job, units, doors } = plan;
  yield { plan: { format: PLAN_FORMAT, job, units, doors: doors.length } };
  const groups: { readonly first: PlanDoor; readonly runs: [number, number, number][] }[] = [];
  let ofMark: typeof groups = [];
  for (const [at, door] of doors.entries()) {
    if (ofMark[0]?.first.mark !== door.mark) ofMark = [];
    const k = Number(door.door.slice(door.mark.length + 1));
    const group = ofMark.find(({ first }) => alike(first, door));
    const run = group?.runs.at(-1);
    if (group === undefined) {
      const fresh: (typeof groups)[number] = { first: door, runs: [[at, k, 1]] };
      groups.push(fresh);
      ofMark.push(fresh);
    } else if (run !== undefined && run[0] + run[2] === at && run[1] + run[2] === k) run[2] += 1;
    else group.runs.push([at, k, 1]);
  }
  for (const { first, runs } of groups) {
    const { mark, values, parts, stages: own, notes } = first;
    const bare = parts.map(({ code: _code, ...part }) => part);
    const [spoken] = speakDoors([{ ...first, notes }], units, 'en');
    yield {
      alike: { mark, runs, values, parts: bare, stages: own, notes: spoken?.notes ?? [] },
    } as unknown as PlanLine;
  }
}

/** Are they one door planned once? Doors of one mark share what was reckoned for them; advice that is given once may differ. */
function alike(one: PlanDoor, other: PlanDoor): boolean {
  return (
    one.values === other.values &&
    one.stages === other.stages &&
    one.notes.length === other.notes.length &&
    one.notes.every((note, k) => note === other.notes[k]) &&
    one.parts.every(({ stages: own }, k) => own === other.parts[k]?.stages)
  );
}

/** Puts the lines of a job's plan together again. Throws when they are not whole. */
export function planOfLines(id: string, lines: readonly PlanLine[]): Plan {
  const [about, ...rest] = lines;
  if (about === undefined || !('plan' in about)) throw new Error('a kept plan begins with what it is of');
  const { job, units, doors: count } = about.plan;
  allowPlanOf(count);
  const doors = new Array<PlanDoor | undefined>(count).fill(undefined);
  for (const line of rest) {
    if (!('alike' in line)) throw new Error('a kept plan is of one job');
    const { runs, mark, parts, ...shared } = line.alike;
    for (const [at, first, many] of runs)
      for (let n = 0; n < many; n += 1) {
        const k = first + n;
        if (at + n >= count || doors[at + n] !== undefined)
          throw new Error('a kept plan has a door too many');
        doors[at + n] = {
          door: `${mark}-${k}`,
          mark,
          ...shared,
          parts: parts.map(({ part, ...own }) => ({
            part,
            code: partCode({ job: id, mark, k, part, replacement: 0 }),
            ...own,
          })),
        } as unknown as PlanDoor;
      }
  }
  const whole = doors.filter((door) => door !== undefined);
  if (whole.length !== count) throw new Error('a kept plan lacks a door');
  return { format: 1, id, job, units, doors: whole };
}
