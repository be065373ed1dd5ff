import type { Plan } from '#core/plan/plan.ts';
import { stickerSays } from '#core/stickers/sticker-says.ts';
import type { Store } from '../store/store.ts';
import type { Announcer } from './events.ts';

/** A sticker that was printed, and a sum of the figures that stand on it. */
export interface PrintedSticker {
  readonly code: string;
  readonly says: string;
}

/** The stickers of a live plan with these codes, each once; of all its parts where none are named. */
export function stickersOf({ doors, units }: Plan, codes?: readonly string[]): PrintedSticker[] {
  const wanted = codes === undefined ? null : new Set(codes);
  return doors.flatMap(({ parts }) =>
    parts.flatMap((part) =>
      wanted === null || wanted.has(part.code) ? [{ code: part.code, says: stickerSays(part, units) }] : [],
    ),
  );
}

/** Writes down which of a job's stickers left a printer, those that had left one before as a reprint of their own, and tells the screens. */
export async function recordPrinted(
  store: Store,
  announcer: Announcer,
  {
    stickers,
    ...run
  }: {
    readonly job: string;
    readonly stickers: readonly PrintedSticker[];
    readonly stock: string;
    readonly printer?: string;
    readonly by?: string;
  },
): Promise<void> {
  const before = store.printed(run.job);
  const known = (code: string) => Object.hasOwn(before, code);
  for (const some of [
    stickers.filter(({ code }) => !known(code)),
    stickers.filter(({ code }) => known(code)),
  ])
    if (some.length > 0)
      await store.print({
        ...run,
        codes: some.map(({ code }) => code),
        says: some.map(({ says }) => says),
      });
  announcer.tell({ event: 'print', data: { job: run.job } });
}
