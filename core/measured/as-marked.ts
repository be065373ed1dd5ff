import { convertPrinted } from '../job/convert-units.ts';
import { doorAsCut } from './apply-measured.ts';
import { type Measured, partSizes } from './measured.ts';
import type { JobProgress } from '../marks/mark.ts';
import { doneOf, doorDone } from '../marks/stage-state.ts';
import { readPart } from '../plan/part-name.ts';
import type { Plan, SettingValue } from '../plan/plan.ts';
import { settingFacts } from '../plan/set-or-follows.ts';
import { otherWay } from '../stages/same-cut.ts';
import { nameOfWhose, setAt, type Spot, spotsOf, type Staged, stagedIn, type Whose } from './staged.ts';

/**
 * A setting as it stood when its stage was marked, kept beside the job because the plan sets it otherwise since. A mark
 * says what was done, never by which number: that is known only while the plan of then is at hand, so it is kept
 * whenever a job is saved.
 */
export interface AsMarked extends Whose, Spot {
  /** The mark that it was done by. Once that is taken back, this says nothing any more. */
  readonly seq: number;
  readonly was: SettingValue;
}

/** So many are kept of a job, some five megabytes: a backup holds a job in one line, and a line has an end. */
const MOST_KEPT = 50_000;

/**
 * What is to be kept beside a job when it is saved: what was marked by the plan of before, or by an earlier one (`kept`),
 * and is set otherwise by the plan of now. Both are live plans of one job. What the plan of now sets as it was cut is let
 * go; of a part that stands in no plan now everything is kept, for the day when it comes back. `measured`: the save says
 * how parts came out. In other units exact lengths are converted and figures with decimals let go.
 */
export function keepAsMarked(
  kept: readonly AsMarked[],
  before: Plan,
  now: Plan,
  progress: JobProgress,
  measured: Measured | null = null,
): AsMarked[] {
  if (Object.keys(progress.parts).length + Object.keys(progress.doors).length === 0) return [];
  const inUnits = (value: SettingValue) => convertPrinted(value, before.units, now.units);
  const earlier = new Map<string, AsMarked>();
  for (const row of kept) {
    const was = inUnits(row.was);
    if (was !== null && seqOf(progress, row) === row.seq) earlier.set(spotName(row), { ...row, was });
  }
  const later = stagedIn(now.doors);
  const found: AsMarked[] = [];
  for (const [name, staged] of stagedIn(before.doors)) {
    const whose = staged.part === undefined ? { door: staged.door } : { code: staged.code };
    for (const stage of staged.stages) {
      const seq = seqOf(progress, { ...whose, stage: stage.stage });
      if (seq === undefined) continue;
      for (const { value, ...spot } of spotsOf(stage)) {
        const row = { ...whose, seq, ...spot };
        const known = earlier.get(spotName(row));
        earlier.delete(spotName(row));
        const old = inUnits(value);
        const planned = later.get(name);
        if (isMadeOtherWay(planned, spot)) continue;
        const set = setAt(planned, spot);
        if (measured !== null && set !== old && isMeasured(staged, spot, measured)) continue;
        const was = known?.was ?? old;
        if (was !== null && was !== set) found.push({ ...row, was });
      }
    }
  }
  for (const row of earlier.values()) {
    const planned = later.get(nameOfWhose(row));
    if (!isMadeOtherWay(planned, row) && setAt(planned, row) !== row.was) found.push(row);
  }
  return found.slice(0, MOST_KEPT);
}

/** Has the plan that cut in another way, so that no number of the one is a number of the other? */
function isMadeOtherWay(planned: Staged | undefined, { stage }: Spot): boolean {
  if (planned === undefined || planned.stages.some((each) => each.stage === stage)) return false;
  const other = otherWay(stage);
  return other !== null && planned.stages.some((each) => other.includes(each.stage));
}

/** The mark that a stage is done by now; undefined while it is open. */
export function seqOf(
  progress: JobProgress,
  { code, door = '', stage }: Whose & Pick<Spot, 'stage'>,
): number | undefined {
  const done = code === undefined ? doorDone(progress, door) : doneOf(progress, code);
  return Object.hasOwn(done, stage) ? done[stage]?.seq : undefined;
}

/** Is it measured on this very part, or on a member of the frame, so that a new one says how it came out, not how it should have been cut? */
function isMeasured({ door, part }: Staged, { stage, name }: Spot, measured: Measured): boolean {
  const own = part === undefined ? {} : partSizes(doorAsCut(measured, door), part);
  if (stage === 'mill' && Object.hasOwn(own, name)) return true;
  const ofFrame = part !== undefined && readPart({ part }).kind !== 'panel';
  return ofFrame && settingFacts(stage, name)?.measured === true;
}

function spotName(spot: Whose & Spot): string {
  return `${nameOfWhose(spot)}\n${spot.stage}\n${spot.place ?? ''}\n${spot.name}`;
}
