import type { Units } from '#core/length/units.ts';
import type { PlanDoor, PlanPart, PlanStage, Settings, SettingValue } from '#core/plan/plan.ts';
import { isOfPiece } from '#core/plan/set-or-follows.ts';
import { howTo } from '#core/telling/how-to.ts';
import { paperStep } from '#core/settable/step.ts';
import { partName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import { withUnit } from '../pdf/value-on-paper.ts';
import { type CardCaution, cautionsFor } from './card-cautions.ts';

/** A stage that several parts have alike, with their names and how it goes. */
export interface AlikeStage {
  readonly stage: PlanStage;
  readonly parts: readonly string[];
  readonly how: readonly string[];
  readonly cautions: readonly CardCaution[];
}

/** A door's stages in the plan's order, once for all parts that are set alike and worked alike there; with what can hurt at it. */
export function alikeStages(door: PlanDoor, units: Units): AlikeStage[] {
  const all = [
    ...door.parts.flatMap((part) =>
      part.stages.map((stage) => ({ ...toldOf(stage, part, units), name: partName(part.part) })),
    ),
    ...door.stages.map((stage) => ({
      ...toldOf(stage, undefined, units),
      name: say('paper.whole-door'),
    })),
  ];
  const found = new Map<string, { -readonly [K in keyof AlikeStage]: AlikeStage[K] }>();
  for (const { stage, name, how, cautions } of all) {
    const key = keyOf(stage, how);
    const known = found.get(key);
    if (known === undefined) found.set(key, { stage, parts: [name], how, cautions });
    else {
      known.parts = [...known.parts, name];
      known.how = [...new Set([...known.how, ...how])];
      known.cautions = [...known.cautions, ...cautions];
    }
  }
  return [...found.values()];
}

/** A stage of a part or of the door with what is told of it. */
function toldOf(stage: PlanStage, part: PlanPart | undefined, units: Units): Omit<AlikeStage, 'parts'> {
  return { stage, how: howLines(stage, part, units), cautions: cautionsFor(stage, part, units) };
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
