import { otherWay, withOtherWay } from '../stages/same-cut.ts';
import { isDoorStage } from '../stages/stage-id.ts';
import type { AcceptedMark, Done, JobProgress, PartProgress } from './mark.ts';

/** A job of which nothing has happened yet. */
export function emptyProgress(job: string): JobProgress {
  return { job, seq: 0, parts: {}, doors: {} };
}

/**
 * The progress after one more mark that was answered. It applies what was answered and never judges it again, so a
 * later version's rules undo no old mark. A mark already folded in, or another job's, changes nothing.
 */
export function applyMark(progress: JobProgress, accepted: AcceptedMark): JobProgress {
  return foldMarks(progress, [accepted]);
}

/** The progress after a run of marks, in their order: the tables are copied once, whatever the number of marks. */
export function foldMarks(progress: JobProgress, run: Iterable<AcceptedMark>): JobProgress {
  const tables: Tables = { seq: progress.seq, parts: { ...progress.parts }, doors: { ...progress.doors } };
  for (const accepted of run)
    if (accepted.job === progress.job && accepted.seq > tables.seq) take(tables, accepted);
  return { job: progress.job, ...tables };
}

interface Tables {
  seq: number;
  readonly parts: Record<string, PartProgress>;
  readonly doors: Record<string, JobProgress['doors'][string]>;
}

function take(tables: Tables, accepted: AcceptedMark): void {
  const { mark, door, replacement } = accepted;
  tables.seq = accepted.seq;
  if (isDoorStage(mark.stage) && (mark.mark === 'done' || mark.mark === 'undo')) {
    tables.doors[door] = { done: changed(own(tables.doors, door)?.done ?? {}, accepted) };
    return;
  }
  tables.parts[mark.code] = afterMark(own(tables.parts, mark.code) ?? firstSight(accepted, 0), accepted);
  if (mark.mark !== 'spoiled' || replacement === undefined) return;
  tables.parts[replacement.code] = { ...firstSight(accepted, replacement.number), code: replacement.code };
  if (own(tables.doors, door) !== undefined) tables.doors[door] = { done: {} };
}

/** What is known of a part, or nothing if it has no mark yet. Own keys only. */
export function own<T>(table: Readonly<Record<string, T>>, key: string): T | undefined {
  return Object.hasOwn(table, key) ? table[key] : undefined;
}

function firstSight({ mark, door, part }: AcceptedMark, number: number): PartProgress {
  return { code: mark.code, door, part, number, done: {}, proved: {} };
}

function afterMark(before: PartProgress, accepted: AcceptedMark): PartProgress {
  const { mark, replacement } = accepted;
  switch (mark.mark) {
    case 'done':
    case 'undo':
      return { ...before, done: changed(before.done, accepted) };
    case 'proved':
      return { ...before, proved: { ...before.proved, [mark.stage]: doneBy(accepted) } };
    case 'spoiled':
      return {
        ...before,
        spoiled: {
          ...doneBy(accepted),
          stage: mark.stage,
          ...(mark.reason === undefined ? {} : { reason: mark.reason }),
        },
        ...(replacement === undefined ? {} : { replacedBy: replacement.code }),
      };
  }
}

function changed(
  done: Readonly<Record<string, Done>>,
  accepted: AcceptedMark,
): Readonly<Record<string, Done>> {
  const { stage, mark } = accepted.mark;
  if (mark === 'done') return { ...done, [stage]: doneBy(accepted) };
  const left: Record<string, Done> = {};
  const recorded = asThisWay(done, stage);
  for (const name in recorded)
    if (name !== stage && recorded[name] !== undefined) left[name] = recorded[name];
  return left;
}

/** What was done, as if the cut that is taken back had been made in its way: of the other way nothing may stay that would count for it. */
function asThisWay(done: Readonly<Record<string, Done>>, stage: string): Readonly<Record<string, Done>> {
  const other = otherWay(stage);
  if (other === null || !other.every((each) => Object.hasOwn(done, each))) return done;
  const same = withOtherWay(done);
  return Object.fromEntries(Object.entries(same).filter(([name]) => !other.some((each) => each === name)));
}

function doneBy({ seq, received, mark }: AcceptedMark): Done {
  const { id, station, by } = mark;
  return by === undefined ? { seq, id, at: received, station } : { seq, id, at: received, station, by };
}
