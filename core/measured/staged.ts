import type { PartName } from '../plan/part-name.ts';
import type { Settings, PlanDoor, PlanStage, SettingValue } from '../plan/plan.ts';

/** What is marked by itself: a part by its code, or a door as a whole. */
export interface Staged {
  readonly door: string;
  readonly part?: PartName;
  /** The part's code; of a whole door that of its first part, by which it is marked too. */
  readonly code: string;
  readonly stages: readonly PlanStage[];
}

/** Whose a mark is: a part's, by its code; or else a door's. */
export interface Whose {
  readonly code?: string | undefined;
  readonly door?: string | undefined;
}

/** One text for a part or a whole door. */
export function nameOfWhose({ code, door = '' }: Whose): string {
  return code ?? `door ${door}`;
}

/** Every part and every whole door of these doors. */
export function stagedIn(doors: readonly PlanDoor[]): Map<string, Staged> {
  const found = new Map<string, Staged>();
  for (const { door, parts, stages } of doors) {
    for (const { code, part, stages: own } of parts)
      found.set(nameOfWhose({ code }), { door, part, code, stages: own });
    found.set(nameOfWhose({ door }), { door, code: parts[0]?.code ?? '', stages });
  }
  return found;
}

/** Where a stage sets something: at one of its places, or everywhere. */
export interface Spot {
  readonly stage: string;
  readonly place?: string | undefined;
  readonly name: string;
}

/** What is set at a spot; undefined where nothing of the kind is. */
export function setAt(staged: Staged | undefined, { stage, place, name }: Spot): SettingValue | undefined {
  const found = staged?.stages.find((each) => each.stage === stage);
  const settings: Settings | undefined =
    place === undefined ? found?.settings : found?.places?.find(({ at }) => at === place)?.settings;
  return settings !== undefined && Object.hasOwn(settings, name) ? settings[name] : undefined;
}

/** Every spot of a stage, with what is set there. */
export function spotsOf({
  stage,
  settings,
  places = [],
}: PlanStage): (Spot & { readonly value: SettingValue })[] {
  return [
    ...Object.entries(settings).map(([name, value]) => ({ stage, name, value })),
    ...places.flatMap(({ at, settings: own }) =>
      Object.entries(own).map(([name, value]) => ({ stage, place: at, name, value })),
    ),
  ];
}
