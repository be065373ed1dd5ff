import type { SettingFacts } from '../stages/setting.ts';
import { kindOf } from '../stages/stage-id.ts';
import { factsOf } from '../stages/table.ts';

/** What is known of a setting of a stage, at one of its places or everywhere; null where there is no such setting. */
export function settingFacts(stage: string, setting: string): SettingFacts | null {
  const kind = kindOf(stage);
  if (kind === null) return null;
  const { settings, place = {} } = factsOf(kind);
  if (Object.hasOwn(settings, setting)) return settings[setting] ?? null;
  return Object.hasOwn(place, setting) ? (place[setting] ?? null) : null;
}

/** Is this number set at the stage, or does it only follow from others that are? */
export function isSet(stage: string, setting: string): boolean {
  return settingFacts(stage, setting)?.follows !== true;
}

/** Does it say how the piece in hand lies, not what stands set on the machine? */
export function isOfPiece(stage: string, setting: string): boolean {
  return settingFacts(stage, setting)?.ofPiece === true;
}
