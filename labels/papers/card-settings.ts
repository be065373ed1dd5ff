import { STATIONS, type StationId } from '#core/stages/stations.ts';
import { fineRounding, USUAL_ROUNDING, showValue, shownText } from '#core/length/reading.ts';
import { measuredFrom } from '#core/plan/measured-from.ts';
import type { PartName } from '#core/plan/part-name.ts';
import { settingFacts } from '#core/plan/set-or-follows.ts';
import { leftToPare } from '#core/plan/left-to-pare.ts';
import type { PlanDoor, PlanStage, Settings, SettingValue, WhyTable } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';
import { cautionKeys } from '#core/words/cautions.ts';
import { howTo } from '#core/telling/how-to.ts';
import { partName, placeName, settingName, stageName } from '#core/telling/names.ts';
import { hasWords, say } from '#core/words/say.ts';
import { asText, withUnit } from '../pdf/value-on-paper.ts';

/**
 * One setting as it stands on a card: its name, its value, and what it is measured from. Where the machine is set beside
 * the line, the value is what to set and the line stands behind it.
 */
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
  /** How the work goes, where the numbers do not say it. */
  readonly how: readonly string[];
}

export interface CardStation {
  readonly station: StationId;
  readonly stages: readonly CardStage[];
  readonly cautions: readonly string[];
}

/** Every setting of a door by station and stage, in the order of work; parts that are set alike stand together. */
export function cardStations(door: PlanDoor, units: Units): CardStation[] {
  const found = new Map<string, { stage: PlanStage; parts: string[]; how: readonly string[] }>();
  const add = (stage: PlanStage, name: string, part?: PartName) => {
    const how = howLines(stage, part, units);
    const key = JSON.stringify([
      stage.stage,
      stage.station,
      stage.settings,
      stage.places?.map(({ at, settings }) => [at, settings]) ?? [],
      how,
    ]);
    const known = found.get(key);
    if (known === undefined) found.set(key, { stage, parts: [name], how });
    else known.parts.push(name);
  };
  for (const part of door.parts) for (const stage of part.stages) add(stage, partName(part.part), part.part);
  for (const stage of door.stages) add(stage, say('paper.whole-door'));
  const all = [...found.values()].map(({ stage }) => stage);
  const told = new Set<string>();
  /** A step that was told above is not told again. */
  const untold = (how: readonly string[]) => how.filter((line) => !told.has(line) && told.add(line));
  return STATIONS.flatMap((station) => {
    const here = [...found.values()].filter(({ stage }) => stage.station === station);
    return here.length === 0
      ? []
      : [
          {
            station,
            stages: here.map(({ stage, parts, how }) => ({
              title: stageName(stage.stage),
              parts: partsOf(stage, parts, all),
              lines: linesOf(stage, units),
              how: untold(how),
            })),
            cautions: cautionKeys(station).map((key) => say(key)),
          },
        ];
  });
}

/** The parts of a stage; with what must be done first where the card prints that further down, at a station that comes later. */
function partsOf({ station, after }: PlanStage, parts: readonly string[], all: readonly PlanStage[]): string {
  const below = (name: string) =>
    all.some((each) => each.stage === name && STATIONS.indexOf(each.station) > STATIONS.indexOf(station));
  const first = after.filter(below).map((name) => stageName(name));
  const names = parts.join(', ');
  return first.length === 0 ? names : say('paper.first', { parts: names, first: first.join(', ') });
}

/** How a stage goes; of a second place only what differs there. */
function howLines(stage: PlanStage, part: PartName | undefined, units: Units): string[] {
  const read = (value: SettingValue) => withUnit(value, units);
  const [first, ...rest] = stage.places ?? [];
  const told = { ...(part === undefined ? {} : { part }), units, read };
  const lines = howTo(stage, { ...told, ...(first === undefined ? {} : { place: first.at }) });
  for (const { at } of rest)
    for (const line of howTo(stage, { ...told, place: at })) if (!lines.includes(line)) lines.push(line);
  return lines;
}

function linesOf(stage: PlanStage, units: Units): CardLine[] {
  return [
    ...settingLines(stage, stage.settings, stage.why, units, ''),
    ...(stage.places ?? []).flatMap(({ at, settings, why }) =>
      settingLines(stage, settings, why, units, `${placeName(at)}: `),
    ),
  ];
}

function settingLines(
  { stage }: PlanStage,
  settings: Settings,
  why: WhyTable | undefined,
  units: Units,
  before: string,
): CardLine[] {
  return Object.entries(settings).map(([name, value]) => {
    // An angle is set to nothing that a rule is laid on.
    const datum = settingFacts(stage, name)?.is === 'angle' ? null : measuredFrom(why?.[name]);
    const from = datum === null ? '' : say('paper.from', { from: datum });
    const called = `${before}${settingName(name, undefined, stage)}`;
    const pare = leftToPare(stage, name, value, units);
    if (pare === null) return { name: called, value: shown(name, value, units), from };
    return {
      name: called,
      value: say('paper.set-line', { set: fine(pare.set, units), line: fine(String(value), units) }),
      from,
    };
  });
}

/** Words and counts stand for themselves; lengths are rounded for reading as everywhere, with the sign for "about". */
function shown(name: string, value: SettingValue, units: Units): string {
  if (name === 'tilt') return `${value}°`;
  const key: string = `value.${value}`;
  if (typeof value === 'string' && hasWords(key)) return say(key);
  return asText(value, units);
}

/** As fine as what is left beside the line. */
function fine(value: string, units: Units): string {
  return shownText(showValue(value, units, fineRounding(USUAL_ROUNDING)));
}
