import type { SettingFacts, SettingTable } from '../stages/setting.ts';
import { kindOf } from '../stages/stage-id.ts';
import type { StationId } from '../stages/stations.ts';
import { factsOf } from '../stages/table.ts';
import { isPlaceName } from './place-name.ts';
import type { PlanStage, Settings, SettingValue } from './plan.ts';

/** A stage whose form is known and nothing else: its kind and its settings are still to be looked at. */
export interface UnreadStage {
  readonly stage: string;
  readonly station: StationId;
  readonly settings: Settings;
  readonly places?: readonly { readonly at: string; readonly settings: Settings }[] | undefined;
  readonly after?: readonly string[];
}

/** What of a stage is known once it has been looked at; `after` too where it has one. */
type Known<T extends UnreadStage> = T extends { readonly after: readonly string[] }
  ? PlanStage
  : Pick<PlanStage, 'stage' | 'station' | 'settings' | 'places'>;

/**
 * Is this a stage of a plan: of a kind that there is, with all that is set there, each of its own sort? A setting that
 * nobody knows is let pass, since a later version may have more.
 */
export function isPlanStage<T extends UnreadStage>(read: T): read is T & Known<T> {
  const kind = kindOf(read.stage);
  if (kind === null) return false;
  const { settings, place } = factsOf(kind);
  if (!holds(settings, read.settings)) return false;
  if (read.after?.every((each) => kindOf(each) !== null) === false) return false;
  if (place === undefined) return read.places === undefined;
  return read.places?.every((each) => isPlaceName(each.at) && holds(place, each.settings)) === true;
}

/** Are these settings all that the table asks for, each of its own sort? */
function holds(table: SettingTable, settings: Settings): boolean {
  for (const name in table) {
    const facts = table[name];
    if (facts === undefined) continue;
    const value = Object.hasOwn(settings, name) ? settings[name] : undefined;
    if (value === undefined ? facts.maybe !== true : !fits(facts, value)) return false;
  }
  return true;
}

function fits({ is }: SettingFacts, value: SettingValue): boolean {
  if (is === 'length' || is === 'real') return typeof value === 'string';
  if (is === 'count' || is === 'angle') return typeof value === 'number';
  return typeof value === 'string' && is.includes(value);
}
