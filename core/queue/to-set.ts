import type { PlaceName } from '../plan/place-name.ts';
import type { Place, PlanStage, SettingValue } from '../plan/plan.ts';
import { settingsToSet } from './setting-key.ts';

/** A setting of a set-up, by its name and, where the stage has several places, by its place. */
export interface NamedSetting {
  /** As in `flatSettings`: the same for no two settings of a set-up, whatever they are called on a screen. */
  readonly key: string;
  readonly name: string;
  readonly at?: PlaceName;
  readonly value: SettingValue;
}

/** What has to be set for a set-up when it comes after another. */
export interface ToSet {
  /** Is all of it to be set, because nothing of its kind stands there before? */
  readonly whole: boolean;
  readonly settings: readonly NamedSetting[];
}

/**
 * What to set for a stage. After a set-up of the same kind, one that has just the same settings to be made (another
 * length at milling, the mitre of the other end), only what differs; after any other, or where nothing is known to stand
 * on the machine, the whole of it: a height that happens to be alike is another height there.
 */
export function toSet(
  from: ReadonlyMap<string, string> | null,
  to: ReadonlyMap<string, string>,
  stage: PlanStage,
): ToSet {
  const whole = from === null || !sameNames(from, to);
  const settings = namedSettings(stage);
  const changed = settingsToSet(from, to);
  return { whole, settings: whole ? settings : settings.filter(({ key }) => changed.has(key)) };
}

/** Every setting of a stage, its places' after its own. */
export function namedSettings({ settings, places = [] }: PlanStage): NamedSetting[] {
  return [
    ...Object.entries(settings).map(([name, value]) => ({ key: name, name, value })),
    ...places.flatMap(({ at, settings: own }: Place) =>
      Object.entries(own).map(([name, value]) => ({ key: `${name} at ${at}`, name, at, value })),
    ),
  ];
}

function sameNames(a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): boolean {
  return a.size === b.size && [...a.keys()].every((name) => b.has(name));
}
