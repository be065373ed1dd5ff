import type { Done } from '../marks/mark.ts';
import { settingKey } from './setting-key.ts';
import type { QueueJob } from './waiting.ts';

/** Who proved a set-up on a test piece, and when: the latest of all parts that are set alike. Null when nobody did. */
export function provedBy(key: string, jobs: Iterable<QueueJob>): Done | null {
  let latest: Done | null = null;
  for (const { plan, index, progress } of jobs)
    for (const { door, part, proved } of Object.values(progress.parts))
      for (const [name, done] of Object.entries(proved)) {
        if (latest !== null && latest.at >= done.at) continue;
        const stage = index.doors
          .get(door)
          ?.parts.find((each) => each.part === part)
          ?.stages.find((each) => each.stage === name);
        if (stage !== undefined && settingKey(plan.units, stage) === key) latest = done;
      }
  return latest;
}
