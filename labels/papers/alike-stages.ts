import type { Units } from '#core/length/units.ts';
import type { PlanDoor, PlanPart, PlanStage, Settings, SettingValue } from '#core/plan/plan.ts';
import { isOfPiece } from '#core/plan/set-or-follows.ts';
import { howTo } from '#core/telling/how-to.ts';
import { paperStep } from '#core/settable/step.ts';
import { partName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import { withUnit } from '../pdf/value-on-paper.ts';

/** A stage that several parts have alike, with their names and how it goes. */
export interface AlikeStage {
  readonly stage: PlanStage;
  readonly parts: readonly string[];
  readonly how: readonly string[];
}

/** A door's stages in the plan's order, once for all parts that are set alike and worked alike there. */
export function alikeStages(door: PlanDoor, units: Units): AlikeStage[] {
  const all = [
    ...door.parts.flatMap((part) =>
      part.stages.map((stage) => ({ stage, name: partName(part.part), how: howLines(stage, part, units) })),
    ),
    ...door.stages.map((stage) => ({
      stage,
      name: say('paper.whole-door'),
      how: howLines(stage, undefined, units),
    })),
  ];
  const found = new Map<string, { stage: PlanStage; parts: string[]; how: readonly string[] }>();
  for (const { stage, name, how } of all) {
    const key = keyOf(stage, how);
    const known = found.get(key);
    if (known === undefined) found.set(key, { stage, parts: [name], how });
    else {
      known.parts.push(name);
      known.how = [...new Set([...known.how, ...how])];
    }
  }
  return [...found.values()];
}

/** What is set, and how it is worked; where only the lie of the piece differs the steps name each part. */
function keyOf({ stage, station, settings, places = [] }: PlanStage, how: readonly string[]): string {
  const lies = (name: string) => isOfPiece(stage, name);
  const set = (each: Settings) => Object.entries(each).filter(([name]) => !lies(name));
  const own = places.map((place) => [place.at, set(place.settings)]);
  const named = places.some((place) => Object.keys(place.settings).some(lies));
  return JSON.stringify([stage, station, settings, own, named ? [] : how]);
}

/** How a stage goes; of a second place only what differs there. */
function howLines(stage: PlanStage, part: PlanPart | undefined, units: Units): string[] {
  const read = (value: SettingValue) => withUnit(value, units);
  const [first, ...rest] = stage.places ?? [];
  const told = { ...(part === undefined ? {} : { part }), step: paperStep(units), read };
  const lines = howTo(stage, { ...told, ...(first === undefined ? {} : { place: first.at }) });
  for (const { at } of rest)
    for (const line of howTo(stage, { ...told, place: at })) if (!lines.includes(line)) lines.push(line);
  return lines;
}
