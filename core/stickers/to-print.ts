import type { JobProgress } from '../marks/mark.ts';
import { isFinished } from '../marks/stage-state.ts';
import type { Plan } from '../plan/plan.ts';
import { isOutdated } from './sticker-says.ts';

/** A live part whose sticker is to be printed: never printed, or printed before the sizes on it changed. */
export interface StickerToPrint {
  readonly code: string;
  readonly door: string;
  readonly part: string;
  readonly outdated: boolean;
}

/** What is known of each printing of a sticker, by code: the sum of the figures that stood on it, where that was kept. */
export type PrintedBefore = Readonly<Record<string, readonly { readonly says?: string | undefined }[]>>;

/** The stickers of a live plan that are to be printed. A finished door needs none any more. */
export function stickersToPrint(
  { doors, units }: Plan,
  progress: JobProgress,
  printed: PrintedBefore,
): StickerToPrint[] {
  return doors.flatMap(({ door, parts }) =>
    isFinished(progress, door)
      ? []
      : parts.flatMap((part): StickerToPrint[] => {
          const last = Object.hasOwn(printed, part.code) ? printed[part.code]?.at(-1) : undefined;
          const outdated = isOutdated(last?.says, part, units);
          return last === undefined || outdated ? [{ code: part.code, door, part: part.part, outdated }] : [];
        }),
  );
}

/** Stickers that are out of date by the plan of now and were not by the plan of before; both are live plans of one job. */
export function newlyOutdated(
  before: Plan,
  now: Plan,
  progress: JobProgress,
  printed: PrintedBefore,
): StickerToPrint[] {
  const known = new Set(
    stickersToPrint(before, progress, printed).flatMap(({ code, outdated }) => (outdated ? [code] : [])),
  );
  return stickersToPrint(now, progress, printed).filter(({ code, outdated }) => outdated && !known.has(code));
}
