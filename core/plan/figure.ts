import type { AsTyped, WordKey } from '../words/say.ts';
import type { PartName } from './part-name.ts';
import type { SettingValue } from './plan.ts';

/** What is to be said, by its key and figures: whoever tells it knows the language. */
export interface Saying {
  readonly words: WordKey;
  readonly figures?: FigureTable;
}

/** A part by its name, or any stile or rail. */
export type NamedPart = PartName | 'stile' | 'rail';

/**
 * A figure of what is to be said: a printed value; or what only a language can say, which is a part
 * inside a sentence or as a title, other words by their key, or one of several words of a file; or a text letter by letter.
 */
export type Figure =
  | SettingValue
  | { readonly part: NamedPart; readonly title?: true }
  | Saying
  | { readonly either: readonly string[] }
  | AsTyped;

/** Figures by their names in a sentence's braces. */
export interface FigureTable {
  readonly [name: string]: Figure;
}
