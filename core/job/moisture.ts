import { type FaultList, isTree, refuseUnknown, report } from '../fields/read-shape.ts';

/** Moisture content of wood in percent: on the day when the panel is glued in, and the least and the most that it comes to where it hangs. */
export interface Moisture {
  readonly atBuild: number;
  readonly low: number;
  readonly high: number;
}

/** Wood is built in at this where a file does not say (common practice, no source), or as near to it as its own range comes. */
const USUAL_AT_BUILD = 8;
const MOST = 30;

/** Reads {atBuild?, low, high}, percent from 0 to 30; at build between the two where nothing is said. Undefined with a fault reported. */
export function readMoisture(input: unknown, path: string, list: FaultList): Moisture | undefined {
  if (isTree(input)) {
    refuseUnknown(input, ['atBuild', 'low', 'high'], path, list);
    const { low, high, atBuild } = input;
    if (isPercent(low) && isPercent(high) && low <= high) {
      if (atBuild === undefined) return { atBuild: Math.min(high, Math.max(low, USUAL_AT_BUILD)), low, high };
      if (isPercent(atBuild)) return { atBuild, low, high };
    }
  }
  report(list, path, 'moisture');
  return undefined;
}

function isPercent(input: unknown): input is number {
  return typeof input === 'number' && input >= 0 && input <= MOST;
}
