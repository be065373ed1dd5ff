import { larger, type Length, times } from '../length/length.ts';
import type { Limits } from '../length/limits.ts';

/** How wide one tenon should be at most: six times its groove, or three inches. Wider it is better made as two. Common practice, no source. */
export function widestTenon(groove: Length, { threeInches }: Limits): Length {
  return larger(times(groove, 6), threeInches);
}
