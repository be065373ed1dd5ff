import { LANGUAGES, say } from '#core/words/say.ts';

const NOWHERE = ['from.none', 'from.chosen', 'from.counted'] as const;

/** From where a number is measured, for a person to read: nothing where it is not measured, as a tool, a choice or a count. */
export function measuredFrom(from: string): string {
  // A reason reckoned here is in this screen's language, one from the hub in the hub's.
  const none = LANGUAGES.some((language) => NOWHERE.some((key) => say(key, {}, language) === from));
  return none ? '' : from;
}
