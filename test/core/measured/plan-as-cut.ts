import { readJob } from '#core/job/read-job.ts';
import { readMeasured } from '#core/measured/read-measured.ts';
import { planJob } from '#core/planning/plan-job.ts';
import type { Plan, PlanDoor } from '#core/plan/plan.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import type { Fault, Result } from '#core/fields/fault.ts';
import { looseStage } from '../../loose-plan.ts';

type Fields = Readonly<Record<string, unknown>>;
/** Sizes of one part as they were measured. */
export type Sizes = Readonly<Record<string, unknown>>;

/** A job of these doors, each marked by its letter from A, planned with what was measured. */
export function planned(
  doors: readonly Fields[],
  measured: unknown,
  units: 'in' | 'mm' = 'in',
  ofJob: Fields = {},
): Result<Plan> {
  const opening = units === 'in' ? { width: '16', height: '30' } : { width: '400', height: '760' };
  const marked = doors.map((door, k) => ({ mark: 'ABCDEFGH'[k], opening, ...door }));
  const job = readJob({ format: 1, job: 'x', units, ...ofJob, doors: marked });
  const read = readMeasured(measured, units);
  if (!job.ok) throw new Error(JSON.stringify(job.faults));
  if (!read.ok) return read;
  return planJob(job.value, builtInProfile(units), { measured: read.value });
}

/** The one door of a job with these parts of it measured. */
export function doorAsCut(
  parts: Readonly<Record<string, Sizes>>,
  door: Fields = {},
  units: 'in' | 'mm' = 'in',
): PlanDoor {
  return only(planned([door], { doors: { 'A-1': { parts } } }, units));
}

/** The first door of a plan; throws where there is none. */
export function only(plan: Result<Plan>): PlanDoor {
  const door = plan.ok ? plan.value.doors[0] : undefined;
  if (door === undefined) throw new Error(JSON.stringify(plan));
  return door;
}

/** What is set for a stage of a part, or at one place of it. */
export function set(
  door: PlanDoor,
  part: string,
  stage: string,
  place?: string,
): Readonly<Record<string, string | number>> {
  const found = looseStage(door.parts.find((each) => each.part === part) ?? { stages: [] }, stage);
  const at = place === undefined ? found : found?.places?.find((each) => each.at === place);
  return at?.settings ?? {};
}

/** What keeps it from being planned, by path and code. */
export function faultsOf(plan: Result<Plan>): string[] {
  const faults: readonly Fault[] = plan.ok ? [] : plan.faults;
  return faults.map(({ path, code }) => `${path} ${code}`);
}
