import type { ReadFields } from '../fields/read.ts';
import { type FaultList, join, report } from '../fields/read-shape.ts';
import type { Units } from '../length/units.ts';
import { doorDefaults } from './defaults.ts';
import { DOOR_FIELDS } from './door-shape.ts';
import type { DoorSpec } from './job.ts';

/** What a door, or a job's defaults, say of the door fields. */
export type DoorFields = ReadFields<typeof DOOR_FIELDS>;

/**
 * One door with every field settled: the door over the job's defaults over the built-in ones, field by field; null and
 * lists replace whole. Null, with faults reported, when something that has no default is missing.
 */
export function settleDoor(
  { survey: ownSurvey, ...door }: DoorFields,
  { survey: jobSurvey, ...job }: DoorFields,
  units: Units,
  path: string,
  list: FaultList,
): DoorSpec | null {
  const built = doorDefaults(units);
  const whole = <G extends object>(group: G, name: 'opening' | 'survey' | 'arch') =>
    hasAll(group, Object.keys(DOOR_FIELDS[name].fields), join(path, name), list) ? group : null;
  const opening = whole({ ...job.opening, ...door.opening }, 'opening');
  const measured = jobSurvey !== undefined || ownSurvey !== undefined;
  const survey = measured ? whole({ ...jobSurvey, ...ownSurvey }, 'survey') : undefined;
  const arched = over(over(built.arch, job.arch), door.arch);
  const arch = arched === null ? null : whole({ kind: 'circular', ...arched } as const, 'arch');
  if (opening === null || survey === null || (arch === null && arched !== null)) return null;
  return {
    ...built,
    ...job,
    ...door,
    opening,
    oversize: { ...built.oversize, ...job.oversize, ...door.oversize },
    reveal: { ...built.reveal, ...job.reveal, ...door.reveal },
    stile: { ...built.stile, ...job.stile, ...door.stile },
    bottomRail: { ...built.bottomRail, ...job.bottomRail, ...door.bottomRail },
    topRail: { ...built.topRail, ...job.topRail, ...door.topRail },
    groove: { ...built.groove, ...job.groove, ...door.groove },
    tenon: { ...built.tenon, ...job.tenon, ...door.tenon },
    mortise: { ...built.mortise, ...job.mortise, ...door.mortise },
    panel: { ...built.panel, ...job.panel, ...door.panel },
    arch,
    ...(survey === undefined ? {} : { survey }),
  };
}

/** A group over another, field by field; null replaces whole, and what is not said stays as it is. */
function over<G extends object>(below: G | null, above: G | null | undefined): G | null {
  if (above === undefined) return below;
  return above === null ? null : { ...below, ...above };
}

/** Is every field there? Reports those that are not; where the group itself was refused, what it lacks is not told as well. */
function hasAll<G extends object>(
  group: G,
  names: readonly string[],
  path: string,
  list: FaultList,
): group is Required<G> {
  const missing = names.filter((name) => !Object.hasOwn(group, name));
  if (list.faults.some((fault) => fault.path.startsWith(path))) return missing.length === 0;
  for (const name of missing) report(list, join(path, name), 'required');
  return missing.length === 0;
}
