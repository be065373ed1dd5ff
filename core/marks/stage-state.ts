import type { PartName } from '../plan/part-name.ts';
import type { DoorSteps, PartSteps, StageStep } from '../plan/plan.ts';
import { withOtherWay } from '../stages/same-cut.ts';
import { isDoorStage, type StageId } from '../stages/stage-id.ts';
import { DOOR_STAGES, factsOf } from '../stages/table.ts';
import type { Done, JobProgress } from './mark.ts';
import { own } from './progress.ts';

/** Where one stage of a part stands: done; the next to be done; or waiting behind it. */
export interface StageState {
  readonly stage: string;
  readonly station: StageStep['station'];
  readonly state: 'done' | 'next' | 'waiting';
}

const bothWays = new WeakMap<Readonly<Record<string, Done>>, Readonly<Record<string, Done>>>();

/** The stages that a part has passed; one that is made in another way now counts in either. */
export function doneOf(progress: JobProgress, code: string): Readonly<Record<string, Done>> {
  const done = recordedOf(progress, code);
  const known = bothWays.get(done);
  if (known !== undefined) return known;
  const whole = withOtherWay(done);
  bothWays.set(done, whole);
  return whole;
}

const NOTHING: Readonly<Record<string, Done>> = {};

/** The stages that a part has passed as they were marked. */
export function recordedOf(progress: JobProgress, code: string): Readonly<Record<string, Done>> {
  return own(progress.parts, code)?.done ?? NOTHING;
}

/** The stages that a door as a whole has passed. */
export function doorDone(progress: JobProgress, door: string): Readonly<Record<string, Done>> {
  return own(progress.doors, door)?.done ?? {};
}

const LAST = DOOR_STAGES.filter((kind) => factsOf(kind).finishes === true);
const CLOSING = DOOR_STAGES.filter((kind) => factsOf(kind).closes === true);

/** Is a door finished: trimmed to its opening? */
export function isFinished(progress: JobProgress, door: string): boolean {
  const done = doorDone(progress, door);
  return LAST.some((stage) => Object.hasOwn(done, stage));
}

/** The stages that a door has passed after which none of its parts can be made anew; none while it is open. */
export function closedBy(progress: JobProgress, door: string): StageId[] {
  const done = doorDone(progress, door);
  return CLOSING.filter((stage) => Object.hasOwn(done, stage));
}

/** A part's stages and then its door's, each with its state. The next is the first, in the plan's order, that is open and whose forerunners are done. */
export function stageStates(part: PartSteps, door: DoorSteps, progress: JobProgress): StageState[] {
  const next = nextStage(part, door, progress);
  const done = doneOf(progress, part.code);
  const whole = doorDone(progress, door.door);
  const state = (stage: StageStep, passed: Readonly<Record<string, Done>>): StageState => ({
    stage: stage.stage,
    station: stage.station,
    state: Object.hasOwn(passed, stage.stage) ? 'done' : stage === next ? 'next' : 'waiting',
  });
  return [...part.stages.map((each) => state(each, done)), ...door.stages.map((each) => state(each, whole))];
}

/** The stage that a part goes to next: its own first, then its door's. Null when all is done. */
export function nextStage<S extends StageStep>(
  part: Pick<PartSteps, 'code'> & { readonly stages: readonly S[] },
  door: Pick<DoorSteps, 'door'> & { readonly stages: readonly S[] },
  progress: JobProgress,
): S | null {
  const done = doneOf(progress, part.code);
  const ready = part.stages.find(
    ({ stage, after }) => !Object.hasOwn(done, stage) && after.every((each) => Object.hasOwn(done, each)),
  );
  if (ready !== undefined) return ready;
  const whole = doorDone(progress, door.door);
  return door.stages.find(({ stage }) => !Object.hasOwn(whole, stage)) ?? null;
}

/** A stage that is still to be done: the asked part's own or its door's; of another part by that part's name. */
export interface Missing {
  readonly part?: PartName;
  readonly stage: StageId;
}

/**
 * What must still be done before this stage of a part: of a part's own stage what it comes after. Of a door's stage the
 * door's stages that it comes after; and where it waits for parts too, whatever is open in any of them of all that comes
 * before it.
 */
export function missingBefore(
  stage: StageStep,
  part: PartSteps,
  door: DoorSteps,
  progress: JobProgress,
): Missing[] {
  const open = (done: Readonly<Record<string, Done>>) => (each: StageId) => !Object.hasOwn(done, each);
  const named = (each: StageId): Missing => ({ stage: each });
  if (!isDoorStage(stage.stage)) return stage.after.filter(open(doneOf(progress, part.code))).map(named);
  const ofDoor = stage.after.filter((each) => isDoorStage(each));
  const missing = ofDoor.filter(open(doorDone(progress, door.door))).map(named);
  if (ofDoor.length === stage.after.length) return missing;
  const before = allBefore(stage, door);
  const ofParts = door.parts.flatMap((each) => {
    const isOpen = open(doneOf(progress, each.code));
    return each.stages.flatMap((own): Missing[] =>
      before.has(own.stage) && isOpen(own.stage) ? [{ part: each.part, stage: own.stage }] : [],
    );
  });
  return [...ofParts, ...missing];
}

/** The stages already done that come after this one, which an undo would leave hanging. */
export function laterDone(
  stage: StageStep,
  part: PartSteps,
  door: DoorSteps,
  progress: JobProgress,
): StageId[] {
  const whole = doorDone(progress, door.door);
  const ofDoor = door.stages.filter(
    (each) => Object.hasOwn(whole, each.stage) && allBefore(each, door).has(stage.stage),
  );
  const done = doneOf(progress, part.code);
  const ofPart = isDoorStage(stage.stage) ? [] : followers(stage, part);
  return [...ofPart.filter((each) => Object.hasOwn(done, each)), ...ofDoor.map((each) => each.stage)];
}

/** The stages of a part that come after one of its own, near or far, in the plan's order. */
function followers(stage: StageStep, part: PartSteps): StageId[] {
  const behind = new Set<StageId>([stage.stage]);
  for (const each of part.stages) if (each.after.some((before) => behind.has(before))) behind.add(each.stage);
  return [...behind].slice(1);
}

/** Doors of one mark share their stages, so this is walked once for all of them. */
const known = new WeakMap<StageStep, ReadonlySet<string>>();

/** Everything that comes before a door's stage, near or far: stages of the door and of its parts. */
function allBefore(stage: StageStep, door: DoorSteps): ReadonlySet<string> {
  const before = known.get(stage);
  if (before !== undefined) return before;
  const found = new Set<string>(stage.after);
  const after = new Map<string, Set<string>>();
  for (const { stages } of [...door.parts, door])
    for (const each of stages) {
      const own = after.get(each.stage) ?? new Set<string>();
      after.set(each.stage, own);
      for (const name of each.after) own.add(name);
    }
  for (const name of found) for (const earlier of after.get(name) ?? []) found.add(earlier);
  known.set(stage, found);
  return found;
}
