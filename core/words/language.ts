import type { en } from './en.ts';

/** Every key that has words: English has them all. */
export type WordKey = keyof typeof en;

/** A key whose words hang on a count: it has words of its own for one. */
type CountedKey = WordKey extends infer Key ? (Key extends `${infer Base}.one` ? Base : never) : never;

/** A key of a table: one of English, or the form of a counted one that English has not ("office.count.doors.few"). */
export type TableKey = WordKey | `${CountedKey & WordKey}.${Intl.LDMLPluralRule}`;

/** Words by their keys. */
export type Words = Readonly<Partial<Record<TableKey, string>>>;

/** A language: its words, and how it writes dates and counts. */
export interface LanguageTable {
  /** What it calls itself where a shop chooses its language; left out, no shop is offered it. */
  readonly name?: string;
  /** By what rules dates are written and counts take their form: a tag of BCP 47. */
  readonly locale: string;
  /** On which day its weeks begin; 0 is Sunday. */
  readonly firstDay: number;
  /** Its words by key. Those that it lacks are said in English. */
  readonly words: Words;
}
