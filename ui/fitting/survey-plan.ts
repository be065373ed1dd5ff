import { z } from 'zod';
import { planFile } from '#core/plan/plan-file.ts';
import type { PlanDoor, Result } from '#core/plan/plan.ts';

/** The six measures of an opening, as the job file names them. */
export const MEASURES = [
  'widthBottom',
  'widthTop',
  'heightLeft',
  'heightRight',
  'diagonalUp',
  'diagonalDown',
] as const;
export type Survey = Readonly<Record<(typeof MEASURES)[number], string>>;

const surveyed = z.partialRecord(z.enum(MEASURES), z.union([z.string(), z.number()]));
const jobShape = z.looseObject({
  doors: z.array(z.looseObject({ mark: z.string(), survey: surveyed.optional() })),
});

/** The survey that stands in the job file for this mark; empty where it has none. */
export function surveyIn(file: unknown, mark: string): Survey {
  const read = jobShape.safeParse(file);
  const found = read.success ? read.data.doors.find((each) => each.mark === mark)?.survey : undefined;
  return Object.fromEntries(MEASURES.map((name) => [name, String(found?.[name] ?? '')])) as Survey;
}

/** The door of this mark planned over a survey of its opening: what comes off each edge, or what is wrong with the measures. */
export function surveyedDoor(file: unknown, mark: string, survey: Survey): Result<PlanDoor> {
  const read = jobShape.safeParse(file);
  const ordered = read.success ? read.data.doors.find((each) => each.mark === mark) : undefined;
  const plan =
    read.success && ordered !== undefined
      ? planFile({ ...read.data, doors: [{ ...ordered, quantity: 1, survey }] })
      : null;
  if (plan === null || !plan.ok)
    return { ok: false, faults: plan?.faults ?? [{ path: 'doors', code: 'required', message: mark }] };
  const door = plan.value.doors[0];
  return door === undefined
    ? { ok: false, faults: [{ path: 'doors', code: 'required', message: mark }] }
    : { ok: true, value: door };
}

/**
 * The job file with the survey of one mark's opening in it. Null when that mark stands for several doors: their openings
 * differ, so each needs a mark of its own first.
 */
export function withSurvey(file: unknown, mark: string, survey: Survey): unknown {
  const read = jobShape.safeParse(file);
  const ordered = read.success ? read.data.doors.find((each) => each.mark === mark) : undefined;
  if (!read.success || ordered === undefined || (ordered.quantity ?? 1) !== 1) return null;
  return {
    ...read.data,
    doors: read.data.doors.map((each) => (each === ordered ? { ...each, survey } : each)),
  };
}
