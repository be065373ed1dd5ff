import { printed, ratio, type Ratio } from '../core/exact.ts';

/** A plan's JSON with every length brought to the nearest multiple by itself, halves up: how numbers were read before they hung together. */
export function eachToTheNearest<T>(tree: T, { n, d }: Ratio): T {
  const each = (value: unknown): unknown => {
    if (typeof value === 'string' && /^(\d+|(\d+ )?\d+\/\d+)$/.test(value)) {
      const exact = ratio(value);
      const count = (2n * exact.n * d + exact.d * n) / (2n * exact.d * n);
      return printed({ n: count * n, d });
    }
    if (Array.isArray(value)) return value.map(each);
    if (typeof value === 'object' && value !== null)
      return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, each(inner)]));
    return value;
  };
  return each(tree) as T;
}
