import { liveCode } from '#core/marks/live-plan.ts';
import { isFinished } from '#core/marks/stage-state.ts';
import { isOtherSum } from '#core/stickers/sticker-says.ts';
import type { JobIndex } from '../store/documents/job-index.ts';
import type { StoredJob } from '../store/documents/stored-job.ts';
import { Stretch } from '../store/files/stretch.ts';
import type { Store } from '../store/store.ts';
import type { PrintedSticker } from '../work/make-print.ts';

/** The live part that a sticker is for. */
interface LiveSticker extends PrintedSticker {
  readonly door: string;
  readonly part: string;
}

/** The stickers of a job as it lives, door by door in the plan's order; others get their turn in between. */
async function* liveStickers(
  store: Store,
  { summary: { id }, index }: StoredJob,
  unfinished: boolean,
): AsyncGenerator<readonly LiveSticker[]> {
  const stretch = new Stretch();
  for (let at = 0; at < index.head.doors; at += 1) {
    await stretch.giveWay();
    const door = index.doorName(at);
    const progress = store.doorProgress(id, door);
    if (unfinished && isFinished(progress, door)) continue;
    yield index
      .stickers(at)
      .map(({ part, code, says }) => ({ door, part, says, code: liveCode(progress, code) }));
  }
}

/** How many of a job's stickers are to be printed: never printed, or printed before the sizes on them changed. A finished door needs none any more. */
export async function countToPrint(store: Store, stored: StoredJob): Promise<number> {
  const printed = store.printed(stored.summary.id);
  let count = 0;
  for await (const stickers of liveStickers(store, stored, true))
    for (const { code, says } of stickers) {
      const last = printed.get(code)?.at(-1);
      if (last === undefined || isOtherSum(last.says, () => says)) count += 1;
    }
  return count;
}

/** The stickers of a job with these codes as they live now, each once, in the plan's order. */
export async function stickersNamed(
  store: Store,
  stored: StoredJob,
  codes: ReadonlySet<string>,
): Promise<PrintedSticker[]> {
  const found: PrintedSticker[] = [];
  for await (const stickers of liveStickers(store, stored, false))
    for (const { code, says } of stickers) if (codes.has(code)) found.push({ code, says });
  return found;
}

/** Printed stickers that are out of date by the plan of now and were not by the plan of before. */
export async function newlyOutdated(
  store: Store,
  before: JobIndex,
  now: StoredJob,
): Promise<Omit<LiveSticker, 'says'>[]> {
  const printed = store.printed(now.summary.id);
  const outdated: Omit<LiveSticker, 'says'>[] = [];
  if (printed.size === 0) return outdated;
  for await (const stickers of liveStickers(store, now, true))
    for (const { code, door, part, says } of stickers) {
      const last = printed.get(code)?.at(-1)?.says;
      if (!isOtherSum(last, () => says)) continue;
      const was = saidBefore(before, door, part);
      if (was !== undefined && isOtherSum(last, () => was)) continue;
      outdated.push({ code, door, part });
    }
  return outdated;
}

function saidBefore(before: JobIndex, door: string, part: string): string | undefined {
  const at = before.doorNamed(door);
  return at === undefined ? undefined : before.stickers(at).find((each) => each.part === part)?.says;
}
