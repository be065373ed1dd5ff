import type { DoorSteps } from '../plan/plan.ts';
import type { JobProgress } from './mark.ts';
import { doneOf, doorDone } from './stage-state.ts';

/** One line of the board: how far a door has come. */
export interface BoardDoor {
  readonly job: string;
  readonly door: string;
  readonly mark: string;
  /** The earliest stage still open in any of its parts, then the door's own; "done" when none is. */
  readonly stage: string;
  /** Stages done and stages in all, those of its parts and its own. */
  readonly done: number;
  readonly of: number;
  readonly parts: readonly {
    readonly part: string;
    readonly code: string;
    readonly stage: string | null;
    readonly done: number;
    readonly of: number;
  }[];
}

/** How far one door has come. */
export function boardDoor(job: string, door: DoorSteps, progress: JobProgress): BoardDoor {
  const whole = doorDone(progress, door.door);
  const parts = door.parts.map(({ part, code, stages }) => {
    const done = doneOf(progress, code);
    const open = stages.filter(({ stage }) => !Object.hasOwn(done, stage));
    return {
      part,
      code,
      stage: open[0]?.stage ?? null,
      open,
      done: stages.length - open.length,
      of: stages.length,
    };
  });
  const openInParts = new Set<string>(parts.flatMap(({ open }) => open.map(({ stage }) => stage)));
  const openInDoor = door.stages.filter(({ stage }) => !Object.hasOwn(whole, stage));
  const doorStagesDone = door.stages.length - openInDoor.length;
  return {
    job,
    door: door.door,
    mark: door.mark,
    stage: stageOrder(door).find((stage) => openInParts.has(stage)) ?? openInDoor[0]?.stage ?? 'done',
    done: doorStagesDone + parts.reduce((sum, { done }) => sum + done, 0),
    of: door.stages.length + parts.reduce((sum, { of }) => sum + of, 0),
    parts: parts.map(({ open: _open, ...rest }) => rest),
  };
}

/** The stages of a door's parts in order: the stiles' first, then what rails and panels add, each where it first stands. */
export function stageOrder(door: DoorSteps): string[] {
  return [...new Set(door.parts.flatMap(({ stages }) => stages.map(({ stage }) => stage)))];
}
