import { type PartName, readPart } from '../plan/part-name.ts';
import { isPlaceName, placeEnd } from '../plan/place-name.ts';
import type { Place, PlanStage, Settings, SettingValue } from '../plan/plan.ts';
import { paredAt } from '../settable/pared-at.ts';
import type { Step } from '../settable/step.ts';
import { readStage } from '../stages/stage-id.ts';
import { factsOf, type PlaceSettingsOf } from '../stages/table.ts';
import { hasWords, say, type WordKey } from '../words/say.ts';
import { partName } from './names.ts';

/** What a stage is done on, and how its numbers are read. */
export interface HowTo {
  readonly part?: PartName;
  /** The place that is worked on; the first one where none is given. */
  readonly place?: string;
  /** To what its numbers are settable: where it is given a stop is told as it is set, short of its line by the chisel's share. */
  readonly step?: Step;
  /** How a length is read; as printed, without idle zeros, where it is not given. */
  readonly read?: (value: SettingValue) => string;
}

/** The lines that say how a stage is done, its numbers in them; none where the drawing and the settings say it all. */
export function howTo(stage: PlanStage, { part, place, step, read = plain }: HowTo = {}): string[] {
  const kind = readStage(stage.stage)?.kind;
  if (kind === undefined) return [];
  const { steps, midSteps, pareSteps } = factsOf(kind);
  const own = part !== undefined && readPart({ part }).at === 'mid' ? (midSteps ?? steps) : steps;
  const keys = [own, 'pareTo' in stage.settings ? pareSteps : undefined].filter((key) => key !== undefined);
  if (keys.length === 0) return [];
  const figures = {
    ...(part === undefined ? {} : { part: partName(part) }),
    ...told(stage.settings, read),
    ...atPlace(stage, place, step, read),
  };
  return keys.flatMap(linesOf).map((line) => say(line, figures));
}

type Read = (value: SettingValue) => string;

/** Settings as they stand in a line. */
function told(settings: Settings, read: Read): Record<string, SettingValue> {
  return Object.fromEntries(
    Object.entries(settings).map(([name, value]) => {
      const key = `named.${value}`;
      return [name, hasWords(key) ? say(key) : read(value)];
    }),
  );
}

/** What a line says of the place that is worked on: its settings, its end, which face is up, and where a stopped cut is set to stop. */
function atPlace(
  stage: PlanStage,
  place: string | undefined,
  step: Step | undefined,
  read: Read,
): Record<string, SettingValue> {
  const places: readonly Place[] = stage.places ?? [];
  const chosen = places.find(({ at }) => at === place) ?? places[0];
  if (chosen === undefined) return {};
  const settings: Settings = chosen.settings;
  const end = isPlaceName(chosen.at) ? placeEnd(chosen.at) : undefined;
  return {
    ...told(settings, read),
    ...(end === undefined ? {} : { end: say(`value.${end}`) }),
    ...('run' in chosen.settings ? stoppedCut(stage, chosen.settings, step, read) : {}),
  };
}

function stoppedCut(
  stage: PlanStage,
  { run, faceUp }: PlaceSettingsOf<'strip'>,
  step: Step | undefined,
  read: Read,
): Record<string, SettingValue> {
  const pared = step === undefined ? null : paredAt(stage.stage, 'run', run, step);
  return { set: read(pared?.set ?? run), face: say(`value.${faceUp}`) };
}

function linesOf(family: string): WordKey[] {
  const keys: WordKey[] = [];
  for (let k = 1; ; k += 1) {
    const key = `${family}.${k}`;
    if (!hasWords(key)) return keys;
    keys.push(key);
  }
}

function plain(value: SettingValue): string {
  return String(value)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');
}
