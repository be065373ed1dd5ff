import { parsePart } from '../plan/part-name.ts';
import { parsePlace } from '../plan/place-name.ts';
import { readStage } from '../stages/stage-id.ts';
import { factsOf } from '../stages/table.ts';
import { hasWords, type Language, say } from '../words/say.ts';

/** The name of a stage: "mitre-mid-2-lower" is "Miter below mid rail 2". An unknown one stands for itself. */
export function stageName(stage: string, language?: Language): string {
  const read = readStage(stage);
  if (read === null) return stage === 'done' ? say('stage.done', {}, language) : stage;
  const { title } = factsOf(read.kind);
  if (typeof title === 'string') return say(title, {}, language);
  const { mid } = read;
  const own = `stage.${mid === undefined ? stage : stage.replace(`-${mid.k}`, '')}`;
  const key = title.find((each) => each === own);
  return key === undefined ? stage : say(key, mid === undefined ? {} : { k: mid.k }, language);
}

/** The name of a part: "rail-mid-1" is "Mid rail 1". An unknown one stands for itself. */
export function partName(name: string, language?: Language): string {
  const part = parsePart(name);
  if (part?.at === 'mid') return say('part.rail-mid', { k: part.k }, language);
  if (part?.at === 'numbered') return say('part.panel-k', { k: part.k }, language);
  const key = `part.${name}`;
  return part !== null && hasWords(key) ? say(key, {}, language) : name;
}

/** The name of a place: "mid-1" is "Mid rail 1". An unknown one stands for itself. */
export function placeName(name: string, language?: Language): string {
  const place = parsePlace(name);
  if (place === null) return name;
  return place.at === 'mid'
    ? say('place.mid', { k: place.k }, language)
    : say(`place.${place.at}`, {}, language);
}

/** The name of a setting. A stage may have a name of its own for it: a saw's height is its blade's. */
export function settingName(name: string, language?: Language, stage = ''): string {
  for (const key of [`setting.${familyOf(stage)}-${name}`, `setting.${name}`])
    if (hasWords(key)) return say(key, {}, language);
  return name;
}

/** Stages that are done alike have names in common: all mitres, all notches. */
function familyOf(stage: string): string {
  const kind = readStage(stage)?.kind;
  return kind === undefined ? stage : (factsOf(kind).namedAs ?? kind);
}

/** The name of a station. */
export function stationName(station: string, language?: Language): string {
  const key = `station.${station}`;
  return hasWords(key) ? say(key, {}, language) : station;
}

/** A station inside a sentence: "at the mortiser". */
export function stationInSentence(station: string, language?: Language): string {
  const key = `at.${station}`;
  return hasWords(key) ? say(key, {}, language) : stationName(station, language);
}

/**
 * The name of a setting as it stands beside its number: shorter where the drawing says the rest. A stage may have a
 * name of its own for it: a mortise stops where a shoulder has its stop block.
 */
export function shortName(name: string, language?: Language, stage?: string): string {
  for (const key of [`short.${familyOf(stage ?? '')}-${name}`, `short.${name}`])
    if (hasWords(key)) return say(key, {}, language);
  return settingName(name, language, stage);
}
