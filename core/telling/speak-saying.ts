import type { Figure, FigureTable, Saying } from '../plan/figure.ts';
import type { SettingValue } from '../plan/plan.ts';
import { type AsTyped, type Figures, type Language, say } from '../words/say.ts';
import { partName } from './names.ts';
import { partInSentence } from './part-in-sentence.ts';

/** How a printed value is told in a sentence. */
export type ReadValue = (value: SettingValue) => SettingValue;

/** A saying in the words of a language. */
export function speakSaying(
  { words, figures = {} }: Saying,
  language: Language,
  read: ReadValue = (value) => value,
): string {
  return say(words, spokenFigures(figures, read, language), language);
}

function spokenFigures(figures: FigureTable, read: ReadValue, language: Language): Figures {
  return each(figures, (figure) => spoken(figure, read, language));
}

/** Figures as they are printed beside their sentence: values as they are, all else in words. */
export function printedFigures(
  figures: FigureTable,
  language: Language,
  read: ReadValue,
): Record<string, SettingValue> {
  return each(figures, (figure) => {
    const words = typeof figure === 'object' ? spoken(figure, read, language) : figure;
    return typeof words === 'object' ? words.typed : words;
  });
}

function spoken(figure: Figure, read: ReadValue, language: Language): SettingValue | AsTyped {
  if (typeof figure !== 'object') return read(figure);
  if ('part' in figure) return (figure.title === true ? partName : partInSentence)(figure.part, language);
  if ('typed' in figure) return figure;
  if ('words' in figure) return speakSaying(figure, language, read);
  return { typed: oneOf(figure.either, language) };
}

/** Words of a file as a person chooses between them: "in" or "mm". */
function oneOf(words: readonly string[], language: Language): string {
  const quoted = words.map((word) => `"${word}"`);
  return quoted.reduce((one, other) =>
    say('list.or', { one: { typed: one }, other: { typed: other } }, language),
  );
}

function each<T>(figures: FigureTable, told: (figure: Figure) => T): Record<string, T> {
  return Object.fromEntries(Object.entries(figures).map(([name, figure]) => [name, told(figure)]));
}
