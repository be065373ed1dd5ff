import type { DoorSteps, PartSteps, StageStep } from '../plan/plan.ts';
import { otherWay } from '../stages/same-cut.ts';
import { isDoorStage, readStage, type StageId } from '../stages/stage-id.ts';
import type { JobProgress, Mark, Refusal } from './mark.ts';
import { own } from './progress.ts';
import { closedBy, doneOf, doorDone, laterDone, type Missing, missingBefore } from './stage-state.ts';

/** The part that a mark's code stands for, with its live door. */
export interface MarkedPart {
  readonly door: DoorSteps;
  readonly part: PartSteps;
}

/** A mark that may be taken, with what it marks; or why it may not. */
export type Judgement =
  | { readonly ok: true; readonly door: DoorSteps; readonly part: PartSteps; readonly stage: StageStep }
  | {
      readonly ok: false;
      readonly code: Refusal;
      readonly missing?: readonly Missing[];
      readonly figures?: Readonly<Record<string, string>>;
    };

/**
 * May this mark be made now? Pure: the hub asks before it writes, a station that is cut off from the hub asks for
 * itself. `found` is the part that the mark's code stands for, with its live door; null when there is none.
 */
export function judgeMark(found: MarkedPart | null, progress: JobProgress, mark: Mark): Judgement {
  const old = own(progress.parts, mark.code);
  if (old?.spoiled !== undefined)
    return refuse('spoiled', [], old.replacedBy === undefined ? {} : { replacedBy: old.replacedBy });
  if (found === null || found.part.code !== mark.code) return refuse('unknown-code');
  const { door, part } = found;
  const stage = [...part.stages, ...door.stages].find((each) => each.stage === mark.stage);
  if (stage === undefined) return judgeOtherWay(found, progress, mark);
  if (mark.mark === 'spoiled') {
    const closed = closedBy(progress, door.door);
    return closed.length > 0
      ? refuse('later-stage-done', closed.map(named))
      : { ok: true, door, part, stage };
  }
  if (stage.station !== mark.station) return refuse('wrong-station', [], { station: stage.station });
  const done = isDoorStage(stage.stage) ? doorDone(progress, door.door) : doneOf(progress, part.code);
  const isDone = Object.hasOwn(done, stage.stage);
  if (mark.mark === 'undo') {
    if (!isDone) return refuse('not-done');
    const later = laterDone(stage, part, door, progress);
    return later.length > 0 ? refuse('later-stage-done', later.map(named)) : { ok: true, door, part, stage };
  }
  if (mark.mark === 'done' && isDone) return refuse('already-done');
  const missing = missingBefore(stage, part, door, progress);
  if (mark.mark === 'done' && missing.length > 0) return refuse('stage-not-reached', missing);
  return { ok: true, door, part, stage };
}

/**
 * A mark of a cut that is made in another way by now, or was till lately: a station had kept it. It counts for the stages
 * that come to the same, and is taken where what comes before those is done; it names no station of today's plan.
 */
function judgeOtherWay({ door, part }: MarkedPart, progress: JobProgress, mark: Mark): Judgement {
  const other = otherWay(mark.stage);
  const stages = part.stages.filter(({ stage }) => other?.includes(stage) === true);
  const [stage] = stages;
  if (other === null || stage === undefined || stages.length < other.length)
    return refuse('malformed', [], { stage: mark.stage });
  if (mark.mark === 'spoiled') {
    const closed = closedBy(progress, door.door);
    return closed.length > 0
      ? refuse('later-stage-done', closed.map(named))
      : { ok: true, door, part, stage };
  }
  const isDone = Object.hasOwn(doneOf(progress, part.code), mark.stage);
  if (mark.mark === 'undo') {
    if (!isDone) return refuse('not-done');
    const later = stages.flatMap((each) => laterDone(each, part, door, progress));
    return later.length > 0 ? refuse('later-stage-done', later.map(named)) : { ok: true, door, part, stage };
  }
  if (mark.mark === 'done' && isDone) return refuse('already-done');
  const missing = stages
    .flatMap((each) => missingBefore(each, part, door, progress))
    .filter((each) => !isOfOtherEnd(each.stage, mark.stage));
  if (mark.mark === 'done' && missing.length > 0) return refuse('stage-not-reached', missing);
  return { ok: true, door, part, stage };
}

/** Is the one a cut of another end or mid rail than the other is of, so that it need not come before it? */
function isOfOtherEnd(stage: string, than: string): boolean {
  const [one, other] = [readStage(stage), readStage(than)];
  return other?.end !== undefined && one?.kind === 'mitre-end' && one.end !== other.end;
}

function refuse(
  code: Refusal,
  missing: readonly Missing[] = [],
  figures: Readonly<Record<string, string>> = {},
): Judgement {
  return {
    ok: false,
    code,
    ...(missing.length > 0 ? { missing } : {}),
    ...(Object.keys(figures).length > 0 ? { figures } : {}),
  };
}

function named(stage: StageId): Missing {
  return { stage };
}
