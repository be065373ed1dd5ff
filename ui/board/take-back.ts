import type { StationId } from '#core/stages/stations.ts';
import { judgeMark } from '#core/marks/judge-mark.ts';
import type { Located } from '#core/marks/live-plan.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import { own } from '#core/marks/progress.ts';

/** A stage that is done and can be taken back: of the part, or of its door as a whole. */
export interface TakenBack {
  readonly stage: string;
  readonly station: StationId;
  readonly whole: boolean;
}

/** The stage that was done last to a part, or to its door as a whole, if it can be taken back; null when there is none. */
export function lastDone(found: Located, progress: JobProgress): TakenBack | null {
  const { part, door } = found;
  const ofDoor = own(progress.doors, door.door)?.done ?? {};
  const ofPart = own(progress.parts, part.code)?.done ?? {};
  const done = [
    ...part.stages.map(({ stage, station }) => ({
      stage,
      station,
      whole: false,
      at: own(ofPart, stage)?.at,
    })),
    ...door.stages.map(({ stage, station }) => ({ stage, station, whole: true, at: own(ofDoor, stage)?.at })),
  ]
    .flatMap(({ at, ...each }) => (at === undefined ? [] : [{ ...each, at }]))
    .filter(({ stage, station }) => {
      const mark = { id: '', code: part.code, station, stage, mark: 'undo', at: '' } as const;
      return judgeMark(found, progress, mark).ok;
    })
    .toSorted((a, b) => b.at.localeCompare(a.at));
  const last = done[0];
  return last === undefined ? null : { stage: last.stage, station: last.station, whole: last.whole };
}
