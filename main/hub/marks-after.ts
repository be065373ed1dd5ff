import type { AcceptedMark } from '#core/marks/mark.ts';
import { LOG_FORMAT, readEntry } from '../store/log/log-entry.ts';
import type { Store } from '../store/store.ts';
import type { MarkPlace } from './last-mark.ts';

/** Whoever is further behind than this many entries gets to what is now sooner by asking for it. */
export const MOST_RESUMED = 2000;

/**
 * The marks that followed one, as far as they are on disk. Null where they cannot be told: that mark does not stand there any
 * more, other data were put in place since, it is too long ago, or the log cannot be read.
 */
export async function marksAfter(
  store: Pick<Store, 'lastSeq' | 'log'>,
  { seq, mark }: MarkPlace,
): Promise<AcceptedMark[] | null> {
  if (seq > store.lastSeq || store.lastSeq - seq > MOST_RESUMED) return null;
  const marks: AcceptedMark[] = [];
  let found = false;
  try {
    for await (const entry of store.log.from(seq - 1)) {
      const read = readEntry(entry.entry, LOG_FORMAT);
      if (!found) {
        found = entry.seq === seq && read?.kind === 'mark' && read.mark.mark.id === mark;
        if (!found) return null;
      } else if (read?.kind === 'restored') return null;
      else if (read?.kind === 'mark') marks.push({ seq: entry.seq, ...read.mark });
    }
  } catch {
    return null;
  }
  return found ? marks : null;
}
