import { multiplied, printed, ratio } from '../core/exact.ts';

/** 1 in = 25.4 mm exactly (international inch, 1959). */
export const MM = { n: 127n, d: 5n };

/** The same in millimetres: every length of a job file times 25.4, exactly. */
export function inMillimetres(value: unknown): unknown {
  if (typeof value === 'string' && /^[\d ]+(\/\d+)?$/.test(value))
    return printed(multiplied(ratio(value), MM));
  if (Array.isArray(value)) return value.map(inMillimetres);
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, inMillimetres(each)]));
  return value;
}
