import type { JobProgress } from '../marks/mark.ts';
import { isFinished } from '../marks/stage-state.ts';
import type { Plan, PlanDoor, SettingValue } from '../plan/plan.ts';
import { type AsMarked, seqOf } from './as-marked.ts';
import { nameOfWhose, setAt, stagedIn } from './staged.ts';

/** A setting that something was cut by and that is another one now. */
export interface Disagreement {
  /** Of the part; of a stage of the whole door a code by which the door is marked. */
  readonly code: string;
  readonly door: string;
  /** Left out where it is the whole door. */
  readonly part?: string | undefined;
  readonly stage: string;
  readonly place?: string | undefined;
  readonly name: string;
  readonly was: SettingValue;
  /** Left out where the plan has no such stage or setting any more. */
  readonly now?: SettingValue | undefined;
}

/** What was cut by another setting than these doors, live ones, have now; each by name. Nothing that was taken back since. */
export function disagreements(
  doors: readonly PlanDoor[],
  progress: JobProgress,
  kept: readonly AsMarked[],
): Disagreement[] {
  if (kept.length === 0) return [];
  const planned = stagedIn(doors);
  return kept.flatMap((row) => {
    const staged = planned.get(nameOfWhose(row));
    if (staged === undefined || seqOf(progress, row) !== row.seq) return [];
    const now = setAt(staged, row);
    if (now === row.was) return [];
    const { stage, place, name, was } = row;
    return [
      {
        code: staged.code,
        door: staged.door,
        ...(staged.part === undefined ? {} : { part: staged.part }),
        stage,
        ...(place === undefined ? {} : { place }),
        name,
        was,
        ...(now === undefined ? {} : { now }),
      },
    ];
  });
}

/** The same of a whole live plan, for those who go on with it: a finished door is left out, nothing of it is cut any more. */
export function standingCuts(
  { doors }: Plan,
  progress: JobProgress,
  kept: readonly AsMarked[],
): Disagreement[] {
  return disagreements(
    doors.filter(({ door }) => !isFinished(progress, door)),
    progress,
    kept,
  );
}

/** Those of the one list that are not in the other, just so. */
export function without(all: readonly Disagreement[], known: readonly Disagreement[]): Disagreement[] {
  const told = new Set(known.map(textOf));
  return all.filter((each) => !told.has(textOf(each)));
}

function textOf({ code, part, stage, place, name, was, now }: Disagreement): string {
  return JSON.stringify([code, part, stage, place, name, was, now]);
}
