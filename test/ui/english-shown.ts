import { de } from '#core/words/de.ts';
import { en } from '#core/words/en.ts';

const GERMAN: Readonly<Partial<Record<string, string>>> = de.words;
/** English as somebody would read it in German's place, as far as it has words of its own: its figures may stand for anything. */
const ENGLISH = Object.entries<string>(en)
  .filter(([key, words]) => GERMAN[key] !== words && /[a-z]{2}/i.test(words.replace(/\{\w+\}/g, '')))
  .filter(([, words]) => !Object.values(GERMAN).includes(words))
  .map(
    ([key, words]) =>
      [
        key,
        new RegExp(
          `^${words
            .split(/\{\w+\}/)
            .map(literally)
            .join('.+')}$`,
          's',
        ),
      ] as const,
  );

function literally(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** What stands on a screen that speaks German and is English all the same, by the keys of its words. */
export function englishShown(): string[] {
  const found: string[] = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node !== null; node = walk.nextNode()) {
    const text = (node.textContent ?? '').replace(/[ \n]+/g, ' ').trim();
    if (text === '') continue;
    for (const [key, words] of ENGLISH) if (words.test(text)) found.push(`${key}: ${text}`);
  }
  return found;
}
