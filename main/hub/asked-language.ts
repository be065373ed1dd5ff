import type { FastifyRequest } from 'fastify';
import { isLanguage, type Language, LANGUAGES } from '#core/words/languages.ts';

/** In which language a request is answered: the first that it takes (Accept-Language) and that there is, else English. */
export function askedLanguage({ headers }: Pick<FastifyRequest, 'headers'>): Language {
  const wanted = (headers['accept-language'] ?? '').slice(0, 1000).split(',').map(rangeOf);
  const best = wanted.filter(({ weight }) => weight > 0).toSorted((a, b) => b.weight - a.weight);
  for (const { tag } of best) {
    const found = languageFor(tag);
    if (found !== null) return found;
  }
  return 'en';
}

/** "de-AT;q=0.8" as its tag and weight. */
function rangeOf(text: string): { readonly tag: string; readonly weight: number } {
  const [tag = '', ...rest] = text.split(';').map((each) => each.trim());
  const weight = rest.map((each) => /^q=([\d.]+)$/i.exec(each)?.[1]).find((each) => each !== undefined);
  return { tag, weight: weight === undefined ? 1 : Number(weight) };
}

/** The language of this tag, or of its first part: "de-AT" is "de". */
function languageFor(tag: string): Language | null {
  const same = LANGUAGES.find((language) => language.toLowerCase() === tag.toLowerCase());
  const [primary = ''] = tag.toLowerCase().split('-');
  return same ?? (isLanguage(primary) ? primary : null);
}
