import { isDoorStage } from '../joint/names.ts';
import type { AcceptedMark, Done, JobProgress, PartProgress } from './mark.ts';

/** A job of which nothing has happened yet. */
export function emptyProgress(job: string): JobProgress {
  return { job, seq: 0, parts: {}, doors: {} };
}

/**
 * The progress after one more mark that was answered. It applies what was answered and never judges it again, so a
 * later version's rules undo no old mark. A mark already folded in changes nothing.
 */
export function applyMark(progress: JobProgress, accepted: AcceptedMark): JobProgress {
  if (accepted.seq <= progress.seq || accepted.job !== progress.job) return progress;
  const next = { ...progress, seq: accepted.seq };
  const { mark, door } = accepted;
  if (isDoorStage(mark.stage) && (mark.mark === 'done' || mark.mark === 'undo'))
    return {
      ...next,
      doors: { ...progress.doors, [door]: { done: changed(progress.doors[door]?.done ?? {}, accepted) } },
    };
  const before = own(progress.parts, mark.code) ?? firstSight(accepted, 0);
  const parts = { ...progress.parts, [mark.code]: afterMark(before, accepted) };
  if (mark.mark !== 'spoiled' || accepted.replacement === undefined) return { ...next, parts };
  const { code, number } = accepted.replacement;
  const doors =
    own(progress.doors, door) === undefined ? progress.doors : { ...progress.doors, [door]: { done: {} } };
  return { ...next, doors, parts: { ...parts, [code]: { ...firstSight(accepted, number), code } } };
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
  return Object.fromEntries(Object.entries(done).filter(([name]) => name !== stage));
}

function doneBy({ seq, received, mark }: AcceptedMark): Done {
  return {
    seq,
    id: mark.id,
    at: received,
    station: mark.station,
    ...(mark.by === undefined ? {} : { by: mark.by }),
  };
}
