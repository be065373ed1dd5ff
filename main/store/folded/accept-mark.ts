import { partCode } from '#core/codes/part-code.ts';
import type { Judgement } from '#core/marks/judge-mark.ts';
import type { AcceptedMark, JobProgress, Mark } from '#core/marks/mark.ts';
import type { StoredJob } from '../documents/stored-job.ts';

/** The mark as it will be told, but for its number. A spoiled part gets the code of the one that takes its place. */
export function acceptMark(
  stored: StoredJob,
  progress: JobProgress,
  mark: Mark,
  { door, part }: Extract<Judgement, { ok: true }>,
): Omit<AcceptedMark, 'seq'> {
  const job = stored.document.id;
  const base = { received: new Date().toISOString(), job, door: door.door, part: part.part, mark };
  if (mark.mark !== 'spoiled') return base;
  const number = (progress.parts[mark.code]?.number ?? 0) + 1;
  const k = Number(door.door.slice(door.mark.length + 1));
  return {
    ...base,
    replacement: {
      code: partCode({ job, mark: door.mark, k, part: part.part, replacement: number }),
      number,
    },
  };
}

/** What makes two marks of one id the same mark. */
export function contentOf({ code, station, stage, mark, by, reason, at }: Mark): string {
  return JSON.stringify([code, station, stage, mark, by ?? null, reason ?? null, at]);
}
