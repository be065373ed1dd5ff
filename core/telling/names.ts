import { hasWords, type Language, say } from '../words/say.ts';

/** The name of a stage: "mitre-mid-2-lower" is "Mitre below mid rail 2". An unknown one stands for itself. */
export function stageName(stage: string, language?: Language): string {
  const mid = /^(mitre|notch)-mid-(\d+)(-lower|-upper)?$/.exec(stage);
  const key = mid === null ? `stage.${stage}` : `stage.${mid[1] ?? ''}-mid${mid[3] ?? ''}`;
  return hasWords(key) ? say(key, { k: mid?.[2] ?? '' }, language) : stage;
}

/** The name of a part: "rail-mid-1" is "Mid rail 1". */
export function partName(part: string, language?: Language): string {
  const numbered = /^(rail-mid|panel)-(\d+)$/.exec(part);
  const key = numbered === null ? `part.${part}` : `part.${numbered[1] === 'panel' ? 'panel-k' : 'rail-mid'}`;
  return hasWords(key) ? say(key, { k: numbered?.[2] ?? '' }, language) : part;
}

/** The name of a place: "mid-1" is "Mid rail 1". */
export function placeName(at: string, language?: Language): string {
  const mid = /^mid-(\d+)$/.exec(at);
  const key = mid === null ? `place.${at}` : 'place.mid';
  return hasWords(key) ? say(key, { k: mid?.[1] ?? '' }, language) : at;
}

/** The name of a setting. A stage may have a name of its own for it: a saw's height is its blade's. */
export function settingName(name: string, language?: Language, stage = ''): string {
  for (const key of [`setting.${familyOf(stage)}-${name}`, `setting.${name}`])
    if (hasWords(key)) return say(key, {}, language);
  return name;
}

/** Stages that are done alike have names in common: all mitres, all notches. */
function familyOf(stage: string): string {
  return /^(mitre|notch)-/.exec(stage)?.[1] ?? stage;
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
