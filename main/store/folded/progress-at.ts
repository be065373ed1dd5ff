import type { AcceptedMark, JobProgress } from '#core/marks/mark.ts';
import { applyMark, own } from '#core/marks/progress.ts';

/** A door's progress as it was when a mark was answered, as far as later marks did not take anything back. */
export function progressAt(now: JobProgress, accepted: AcceptedMark): JobProgress {
  const upTo = <T extends { readonly seq: number }>(table: Readonly<Record<string, T>>) =>
    Object.fromEntries(Object.entries(table).filter(([, { seq }]) => seq < accepted.seq));
  const part = own(now.parts, accepted.mark.code);
  const door = own(now.doors, accepted.door);
  const before: JobProgress = {
    ...now,
    seq: accepted.seq - 1,
    parts: part === undefined ? now.parts : { ...now.parts, [part.code]: { ...part, done: upTo(part.done) } },
    doors: door === undefined ? now.doors : { ...now.doors, [accepted.door]: { done: upTo(door.done) } },
  };
  return applyMark(before, accepted);
}
