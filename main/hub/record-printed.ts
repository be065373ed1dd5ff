import type { Store } from '../store/store.ts';
import type { PrintedSticker } from '../work/make-print.ts';
import type { Announcer } from './events.ts';

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
  const known = (code: string) => before.has(code);
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
