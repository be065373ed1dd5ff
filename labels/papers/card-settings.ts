import { STATIONS, type StationId } from '#core/joint/names.ts';
import { USUAL_ROUNDING, showValue, shownText } from '#core/length/shown.ts';
import type { PlanDoor, PlanStage, Settings, SettingValue, Units, Why } from '#core/plan/plan.ts';
import { cautionKeys } from '#core/words/cautions.ts';
import { partName, placeName, settingName, stageName } from '#core/words/names.ts';
import { hasWords, say } from '#core/words/say.ts';

/** Data that a card need not name: no rule is laid on there. */
const NOT_MEASURED = ['from.none', 'from.chosen', 'from.counted', 'from.square'] as const;

/** One setting as it stands on a card: its name, its value, and what it is measured from. */
export interface CardLine {
  readonly name: string;
  readonly value: string;
  readonly from: string;
}

/** A stage on a card, once for all parts that are set alike there. */
export interface CardStage {
  readonly title: string;
  readonly parts: string;
  readonly lines: readonly CardLine[];
}

export interface CardStation {
  readonly station: StationId;
  readonly stages: readonly CardStage[];
  readonly cautions: readonly string[];
}

/** Every setting of a door by station and stage, in the order of work; parts that are set alike stand together. */
export function cardStations(door: PlanDoor, units: Units): CardStation[] {
  const found = new Map<string, { stage: PlanStage; parts: string[] }>();
  const add = (stage: PlanStage, part: string) => {
    const key = JSON.stringify([
      stage.stage,
      stage.station,
      stage.settings,
      stage.places?.map(({ at, settings }) => [at, settings]) ?? [],
    ]);
    const known = found.get(key);
    if (known === undefined) found.set(key, { stage, parts: [part] });
    else known.parts.push(part);
  };
  for (const part of door.parts) for (const stage of part.stages) add(stage, partName(part.part));
  for (const stage of door.stages) add(stage, say('paper.whole-door'));
  return STATIONS.flatMap((station) => {
    const here = [...found.values()].filter(({ stage }) => stage.station === station);
    return here.length === 0
      ? []
      : [
          {
            station,
            stages: here.map(({ stage, parts }) => ({
              title: stageName(stage.stage),
              parts: parts.join(', '),
              lines: linesOf(stage, units),
            })),
            cautions: cautionKeys(station).map((key) => say(key)),
          },
        ];
  });
}

function linesOf(stage: PlanStage, units: Units): CardLine[] {
  return [
    ...settingLines(stage.settings, stage.why, units, ''),
    ...(stage.places ?? []).flatMap(({ at, settings, why }) =>
      settingLines(settings, why, units, `${placeName(at)}: `),
    ),
  ];
}

function settingLines(
  settings: Settings,
  why: Readonly<Record<string, Why>> | undefined,
  units: Units,
  before: string,
): CardLine[] {
  return Object.entries(settings).map(([name, value]) => ({
    name: `${before}${settingName(name)}`,
    value: shown(name, value, units),
    from: measuredFrom(why?.[name]?.from),
  }));
}

/** Words and counts stand for themselves; lengths are rounded for reading as everywhere, with the sign for "about". */
function shown(name: string, value: SettingValue, units: Units): string {
  if (name === 'tilt') return `${value}°`;
  const key: string = `value.${value}`;
  if (typeof value === 'string' && hasWords(key)) return say(key);
  return shownText(showValue(value, units, USUAL_ROUNDING));
}

/** A choice from what the shop has is measured from nothing. */
function measuredFrom(from: string | undefined): string {
  return from === undefined || NOT_MEASURED.some((key) => from === say(key))
    ? ''
    : say('paper.from', { from });
}
