import { type BoardDoor, boardDoor } from '#core/marks/board.ts';
import { liveDoor } from '#core/marks/live-plan.ts';
import { own } from '#core/marks/progress.ts';
import type { PlanDoor } from '#core/plan/plan.ts';
import type { StationId } from '#core/stages/stations.ts';
import type { LiveJob } from '../hub/live.svelte.ts';

/** A line of the board as it is shown. */
export interface Row extends BoardDoor {
  readonly key: string;
  /** The job's name. */
  readonly jobName: string;
  /** The station where the door's earliest open stage is done. */
  readonly station: StationId | undefined;
  /** The parts that are not done yet, those at that earliest stage first: the door waits for them. */
  readonly waitsFor: BoardDoor['parts'];
}

interface Seen {
  readonly planned: PlanDoor;
  readonly marks: readonly unknown[];
  readonly row: Row;
}

/**
 * The rows of the board. A row is reckoned anew only when a mark has touched its door: three hundred doors are looked
 * through in a millisecond, and everything of a row that has not changed is the same object as before.
 */
export class BoardRows {
  readonly #seen = new Map<string, Seen>();

  of(jobs: Iterable<LiveJob>): Row[] {
    return [...jobs].flatMap((job) => job.plan.doors.map((planned) => this.#row(job, planned)));
  }

  #row({ line, progress }: LiveJob, planned: PlanDoor): Row {
    const key = `${line.id}/${planned.door}`;
    const marks = [
      line.job,
      own(progress.doors, planned.door),
      ...planned.parts.map(({ code }) => own(progress.parts, code)),
    ];
    const before = this.#seen.get(key);
    const replaced = planned.parts.some(({ code }) => own(progress.parts, code)?.replacedBy !== undefined);
    const same =
      before !== undefined &&
      !replaced &&
      before.planned === planned &&
      before.marks.every((mark, k) => mark === marks[k]);
    if (same) return before.row;
    const door = liveDoor(planned, progress);
    const reached = boardDoor(line.id, door, progress);
    const station = [...door.parts.flatMap(({ stages }) => stages), ...door.stages].find(
      ({ stage }) => stage === reached.stage,
    )?.station;
    const open = reached.parts.filter(({ stage }) => stage !== null);
    const earliest = (stage: string | null) => (stage === reached.stage ? 0 : 1);
    const waitsFor = open.toSorted((a, b) => earliest(a.stage) - earliest(b.stage));
    const row = { ...reached, key, jobName: line.job, station, waitsFor };
    this.#seen.set(key, { planned, marks, row });
    return row;
  }
}
