import type { Units } from '#core/length/units.ts';
import type { PlanDoor, PlanStage, SettingValue } from '#core/plan/plan.ts';
import { type StationId, STATIONS } from '#core/stages/stations.ts';
import { cautionText, gravestOf } from '#core/telling/cautions-of.ts';
import { stageName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import { withUnit } from '../pdf/value-on-paper.ts';
import { alikeStages } from './alike-stages.ts';
import { type CardLine, settingLines } from './card-settings.ts';

/** A stage on a card, once for all parts that are set alike there. */
export interface CardStage {
  readonly title: string;
  readonly parts: string;
  readonly lines: readonly CardLine[];
  /** How the work goes, where the numbers do not say it. */
  readonly how: readonly string[];
  /** How many steps the work has in all, those told above too. */
  readonly steps: number;
}

export interface CardStation {
  readonly station: StationId;
  readonly stages: readonly CardStage[];
  readonly cautions: readonly string[];
}

/** Every setting of a door by station and stage, in the order of work; parts that are set alike stand together. */
export function cardStations(door: PlanDoor, units: Units): CardStation[] {
  const found = alikeStages(door, units);
  const all = found.map(({ stage }) => stage);
  const told = new Set<string>();
  /** A step that was told above is not told again. */
  const untold = (how: readonly string[]) => how.filter((line) => !told.has(line) && told.add(line));
  return STATIONS.flatMap((station) => {
    const stages = found
      .filter(({ stage }) => stage.station === station)
      .map(({ stage, parts, how }) => ({
        title: stageName(stage.stage),
        parts: partsOf(stage, parts, all),
        lines: settingLines(stage, units),
        how: untold(how),
        steps: how.length,
      }));
    return stages.length === 0 ? [] : [{ station, stages, cautions: cautionsAt(station, door, units) }];
  });
}

/** The gravest danger of each stage that the door has at a station, an arched part's beside the others', each once. */
function cautionsAt(station: StationId, door: PlanDoor, units: Units): string[] {
  const lengths = { units, read: (value: SettingValue) => withUnit(value, units) };
  const all = [
    ...door.parts.flatMap((part) => part.stages.map((stage) => ({ stage, cautioned: { part, lengths } }))),
    ...door.stages.map((stage) => ({ stage, cautioned: { lengths } })),
  ];
  const told = all
    .filter(({ stage }) => stage.station === station)
    .map(({ stage, cautioned }) => cautionText(gravestOf(stage, cautioned)));
  return [...new Set(told)];
}

/** The parts of a stage; with what must be done first where the card prints that further down, at a station that comes later. */
function partsOf({ station, after }: PlanStage, parts: readonly string[], all: readonly PlanStage[]): string {
  const below = (name: string) =>
    all.some((each) => each.stage === name && STATIONS.indexOf(each.station) > STATIONS.indexOf(station));
  const first = after.filter(below).map((name) => stageName(name));
  const names = parts.join(', ');
  return first.length === 0 ? names : say('paper.first', { parts: names, first: first.join(', ') });
}
