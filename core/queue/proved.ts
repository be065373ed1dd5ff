import type { Done } from '../marks/mark.ts';
import type { StationId } from '../stages/stations.ts';
import { seqOf } from '../measured/as-marked.ts';
import { settingFacts } from '../plan/set-or-follows.ts';
import type { PlanStage } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
import { flatSettings } from './setting-key.ts';
import type { QueueJob } from './waiting.ts';

const BY_HAND: ReadonlySet<StationId> = new Set(['bench', 'assembly', 'fitting']);

/** Is a station's work done by hand, to lines, so that nothing stands set there from one part to the next? */
export function isByHand(station: StationId): boolean {
  return BY_HAND.has(station);
}

/** Is there a set-up to be proved on a test piece: a machine, and something that is set on it? */
export function hasProof({ station, settings, places = [] }: PlanStage): boolean {
  return !isByHand(station) && Object.keys(settings).length + places.length > 0;
}

/** Does a test piece prove this setting? At milling the length is only cut. */
function isProved(stage: string, name: string): boolean {
  return settingFacts(stage, name)?.unproved !== true;
}

/**
 * What a test piece proves of a set-up: two stages with the same key are proved by one. All that is set; at milling the
 * thickness and the width, since a length is only cut.
 */
export function proofKey(units: Units, stage: PlanStage): string {
  const proved = [...flatSettings(units, stage)].filter(([name]) => isProved(stage.stage, name));
  return JSON.stringify(proved.sort(([a], [b]) => (a < b ? -1 : 1)));
}

/**
 * Who proved a set-up on a test piece, by its `proofKey`, and when: the latest of all parts that it counts for, by number,
 * as clocks are set back. Null when nobody did. A proof was of the settings of its day: one on a part that is set otherwise since it was cut proves nothing now.
 */
export function provedBy(key: string, jobs: Iterable<QueueJob>): Done | null {
  let latest: Done | null = null;
  for (const { plan, index, progress, asMarked = [] } of jobs) {
    const setOtherwise = new Set(
      asMarked
        .filter((row) => isProved(row.stage, row.name) && seqOf(progress, row) === row.seq)
        .map(({ code = '', stage }) => `${code} ${stage}`),
    );
    for (const { code, door, part, proved } of Object.values(progress.parts))
      for (const [name, done] of Object.entries(proved)) {
        if ((latest !== null && latest.seq >= done.seq) || setOtherwise.has(`${code} ${name}`)) continue;
        const stage = index.doors
          .get(door)
          ?.parts.find((each) => each.part === part)
          ?.stages.find((each) => each.stage === name);
        if (stage !== undefined && proofKey(plan.units, stage) === key) latest = done;
      }
  }
  return latest;
}
