import { isDoorStage } from '../stages/stage-id.ts';
import { type StationId, STATIONS } from '../stages/stations.ts';
import { liveDoor } from '../marks/live-plan.ts';
import { missingBefore, nextStage } from '../marks/stage-state.ts';
import type { QueueJob } from './waiting.ts';

/** How many parts, or whole doors, wait at each station now: what its list counts, in one walk over the jobs. */
export function countWaiting(jobs: Iterable<QueueJob>): ReadonlyMap<StationId, number> {
  const counts = new Map<StationId, number>(STATIONS.map((station) => [station, 0]));
  for (const { plan, progress } of jobs)
    for (const planned of plan.doors) {
      const door = liveDoor(planned, progress);
      let wholeDoor = false;
      for (const part of door.parts) {
        const stage = nextStage(part, door, progress);
        if (stage === null || (wholeDoor && isDoorStage(stage.stage))) continue;
        if (missingBefore(stage, part, door, progress).length > 0) continue;
        counts.set(stage.station, (counts.get(stage.station) ?? 0) + 1);
        if (isDoorStage(stage.stage)) wholeDoor = true;
      }
    }
  return counts;
}
