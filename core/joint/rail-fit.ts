import { half, type Length, less, sign, sum, times } from '../length/length.ts';
import type { Joint } from './derive.ts';

/**
 * What becomes of a rail that came out so long. Between the shoulders it must measure what the door does, so both tenons
 * take half of the error: `fits` where they still may, with that stop at both ends. Too `long` are tenons that would
 * meet the floor of their mortises; too `short` are those under two grooves' width, or that the groove eats whole.
 */
export type RailFit =
  { readonly kind: 'fits'; readonly stop: Length } | { readonly kind: 'long' | 'short'; readonly by: Length };

/** How a rail of this length is fitted: the stop is (length − shoulder to shoulder)/2. */
export function railFit({ spec, railLength, shoulderToShoulder }: Joint, length: Length): RailFit {
  const { bead, groove, mortise, tenon } = spec;
  const stop = half(less(length, shoulderToShoulder));
  if (stop.compare(sum(tenon.length, mortise.clearance)) > 0)
    return { kind: 'long', by: less(length, railLength) };
  const eaten = sign(less(sum(bead, stop), groove.depth)) <= 0;
  const short = stop.compare(tenon.length) < 0 && stop.compare(times(groove.width, 2)) < 0;
  return eaten || short ? { kind: 'short', by: less(railLength, length) } : { kind: 'fits', stop };
}
