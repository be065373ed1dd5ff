import { type Length, sign, times } from '../length/length.ts';
import type { Found } from './findings.ts';

/** What is left of something, for a sentence: a length; "nothing", and by how much it is short, where that is less than none. */
export function leftOf(left: Length): Found {
  if (sign(left) > 0) return left;
  return sign(left) === 0
    ? { words: 'left.nothing' }
    : { words: 'left.short', figures: { short: times(left, -1) } };
}
