import type { Figure } from '../plan/figure.ts';

/** What a wrong value is, in a word. */
export function kindOf(input: unknown): Figure {
  if (input === null || typeof input === 'boolean') return { typed: String(input) };
  if (Array.isArray(input)) return { words: 'got.list' };
  if (typeof input === 'object') return { words: 'got.object' };
  if (input === undefined) return { words: 'got.nothing' };
  return { words: typeof input === 'number' ? 'got.number' : 'got.string' };
}

/** A wrong value itself: a text in quotes, shortened; of all else what it is. */
export function got(input: unknown): Figure {
  if (typeof input !== 'string') return kindOf(input);
  return { typed: JSON.stringify(input.length > 40 ? `${input.slice(0, 40)}…` : input) };
}

/** A number itself, all else as `got` has it. */
export function gotNumber(input: unknown): Figure {
  return typeof input === 'number' ? { typed: String(input) } : got(input);
}
