import type { PlanDoor, PlanPart, PlanStage } from '../plan/plan.ts';
import type { Done, JobProgress } from './mark.ts';
import { own } from './progress.ts';

/** Where one stage of a part stands: done; the next to be done; or waiting behind it. */
export interface StageState {
  readonly stage: string;
  readonly station: PlanStage['station'];
  readonly state: 'done' | 'next' | 'waiting';
}

/** The stages that a part has passed. */
export function doneOf(progress: JobProgress, code: string): Readonly<Record<string, Done>> {
  return own(progress.parts, code)?.done ?? {};
}

/** The stages that a door as a whole has passed. */
export function doorDone(progress: JobProgress, door: string): Readonly<Record<string, Done>> {
  return own(progress.doors, door)?.done ?? {};
}

/** Is a door finished: trimmed to its opening? */
export function isFinished(progress: JobProgress, door: string): boolean {
  return Object.hasOwn(doorDone(progress, door), 'trim');
}

/** A part's stages and then its door's, each with its state. The next is the first, in the plan's order, that is open and whose forerunners are done. */
export function stageStates(part: PlanPart, door: PlanDoor, progress: JobProgress): StageState[] {
  const next = nextStage(part, door, progress);
  const done = doneOf(progress, part.code);
  const whole = doorDone(progress, door.door);
  const state = (stage: PlanStage, passed: Readonly<Record<string, Done>>): StageState => ({
    stage: stage.stage,
    station: stage.station,
    state: Object.hasOwn(passed, stage.stage) ? 'done' : stage === next ? 'next' : 'waiting',
  });
  return [...part.stages.map((each) => state(each, done)), ...door.stages.map((each) => state(each, whole))];
}

/** The stage that a part goes to next: its own first, then its door's. Null when all is done. */
export function nextStage(part: PlanPart, door: PlanDoor, progress: JobProgress): PlanStage | null {
  const done = doneOf(progress, part.code);
  const ready = part.stages.find(
    ({ stage, after }) => !Object.hasOwn(done, stage) && after.every((each) => Object.hasOwn(done, each)),
  );
  if (ready !== undefined) return ready;
  const whole = doorDone(progress, door.door);
  return door.stages.find(({ stage }) => !Object.hasOwn(whole, stage)) ?? null;
}

/** What must still be done before this stage of a part: its own stages by name; for a door's stage "part: stage". */
export function missingBefore(
  stage: PlanStage,
  part: PlanPart,
  door: PlanDoor,
  progress: JobProgress,
): string[] {
  if (!door.stages.includes(stage)) {
    const done = doneOf(progress, part.code);
    return stage.after.filter((each) => !Object.hasOwn(done, each));
  }
  const whole = doorDone(progress, door.door);
  const before = stage.after.filter((each) => door.stages.some((own) => own.stage === each));
  const missing = before.filter((each) => !Object.hasOwn(whole, each));
  if (stage.stage === 'trim') return missing;
  const open = door.parts.flatMap((each) => {
    const done = doneOf(progress, each.code);
    return each.stages
      .filter(
        (own) => !Object.hasOwn(done, own.stage) && (own.stage !== 'finish' || stage.stage !== 'dryfit'),
      )
      .map((own) => `${each.part}: ${own.stage}`);
  });
  return [...open, ...missing];
}

/** The stages already done that come after this one, which an undo would leave hanging. */
export function laterDone(stage: PlanStage, part: PlanPart, door: PlanDoor, progress: JobProgress): string[] {
  const whole = doorDone(progress, door.door);
  const doorLater = door.stages.filter((each) => Object.hasOwn(whole, each.stage)).map((each) => each.stage);
  if (door.stages.includes(stage)) {
    const order = door.stages.map((each) => each.stage);
    return doorLater.filter((each) => order.indexOf(each) > order.indexOf(stage.stage));
  }
  const done = doneOf(progress, part.code);
  const behind = new Set([stage.stage]);
  for (const each of part.stages) if (each.after.some((before) => behind.has(before))) behind.add(each.stage);
  behind.delete(stage.stage);
  const laterDoor = stage.stage === 'finish' ? doorLater.filter((each) => each !== 'dryfit') : doorLater;
  return [...[...behind].filter((each) => Object.hasOwn(done, each)), ...laterDoor];
}
