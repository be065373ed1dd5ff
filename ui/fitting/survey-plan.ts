import { z } from 'zod';
import { isTree, type Tree } from '#core/fields/read-shape.ts';
import { readMeasured } from '#core/measured/read-measured.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { PlanOptions } from '#core/planning/plan-job.ts';
import type { PlanDoor } from '#core/plan/plan.ts';
import { faultOf, type Result } from '#core/fields/fault.ts';
import type { Units } from '#core/length/units.ts';

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

/** The door whose opening is measured, and what was measured for its job besides the job file. */
export interface SurveyedDoor {
  /** "A-2", of the mark "A". */
  readonly door: string;
  readonly mark: string;
  readonly measured: Tree;
}

/** The survey of this door's opening: its own, or the one that stands in the job file for its mark; empty where there is none. */
export function surveyIn(file: unknown, { door, mark, measured }: SurveyedDoor): Survey {
  const read = jobShape.safeParse(file);
  const own = surveyed.safeParse(treeAt(measured, door).survey);
  const found = own.success
    ? own.data
    : read.success
      ? read.data.doors.find((each) => each.mark === mark)?.survey
      : undefined;
  return Object.fromEntries(MEASURES.map((name) => [name, String(found?.[name] ?? '')])) as Survey;
}

/** The door planned over a survey of its opening: what comes off each edge, or what is wrong with the measures. */
export function surveyedDoor(
  file: unknown,
  { door: named, mark, measured }: SurveyedDoor,
  survey: Survey,
): Result<PlanDoor> {
  const read = jobShape.safeParse(file);
  const ordered = read.success ? read.data.doors.find((each) => each.mark === mark) : undefined;
  const plan =
    read.success && ordered !== undefined
      ? planFile(
          { ...read.data, doors: [{ ...ordered, quantity: 1, survey }] },
          asCutOnly(treeAt(measured, named), mark, read.data.units === 'mm' ? 'mm' : 'in'),
        )
      : null;
  if (plan?.ok === false) return plan;
  const door = plan?.value.doors[0];
  return door === undefined
    ? { ok: false, faults: [faultOf('doors', 'mark-unknown', { mark: { typed: mark } })] }
    : { ok: true, value: door };
}

/** What this screen saves: a job file with the survey in it; or, for one door of several alike, what is kept beside it. */
export type SurveySaved = { readonly file: Tree } | { readonly measured: Tree };

/**
 * The survey as it is saved. Where the mark stands for one door it is the job file's; of one door of several it is kept
 * beside the file for that door alone: the others, and every sticker, stay as they are. Null when the file has no such mark.
 */
export function withSurvey(
  file: unknown,
  { door, mark, measured }: SurveyedDoor,
  survey: Survey,
): SurveySaved | null {
  const read = jobShape.safeParse(file);
  const ordered = read.success ? read.data.doors.find((each) => each.mark === mark) : undefined;
  if (!read.success || ordered === undefined) return null;
  const own = treeAt(measured, door);
  if ((ordered.quantity ?? 1) === 1 && own.survey === undefined)
    return {
      file: {
        ...read.data,
        doors: read.data.doors.map((each) => (each === ordered ? { ...each, survey } : each)),
      },
    };
  const doors = isTree(measured.doors) ? measured.doors : {};
  return { measured: { ...measured, doors: { ...doors, [door]: { ...own, survey } } } };
}

/** What was measured of this door. */
function treeAt({ doors }: Tree, door: string): Tree {
  const own = isTree(doors) && Object.hasOwn(doors, door) ? doors[door] : undefined;
  return isTree(own) ? own : {};
}

/** The door's own opening, for the one door that the plan is made of. */
function asCutOnly({ opening }: Tree, mark: string, units: Units): PlanOptions {
  const read = readMeasured({ doors: { [`${mark}-1`]: opening === undefined ? {} : { opening } } }, units);
  return read.ok ? { measured: read.value } : {};
}
