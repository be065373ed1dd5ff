import { larger, length, less, type Length, over, sum, times } from '../length/length.ts';

/** A panel's place in its groove, in the job's units. */
export interface PanelFit {
  readonly clearance: Length;
  readonly depth: Length;
}

/** What a fit is looked for. */
export interface FitSought {
  /** Between the sight edges of the stiles. */
  readonly sightWidth: Length;
  /** What a panel of width 1 grows and shrinks by over the shop's moisture. */
  readonly share: Length;
  /** The groove as ordered: it is not made shallower. */
  readonly depth: Length;
  /** The groove must stay under this. */
  readonly under: Length;
  /** What clearance and depth are set to, and rounded up to. */
  readonly step: Length;
}

/**
 * The least clearance q, in the shallowest groove d, with which a floating panel neither swells past 2q nor shrinks past
 * its hold d − 2q. The panel is V + 2(d − q) wide, so both change its movement too. Null where the groove would be too deep.
 */
export function clearanceThatDoes({ sightWidth, share, depth, under, step }: FitSought): PanelFit | null {
  // Swelling: 2q ≥ c(V + 2(d − q)). Shrinking: d − 2q ≥ c(V + 2(d − q)). Both at their limits: d = 2cV / (1 − 3c).
  const left = less(length(1), times(share, 3));
  if (left.compare(0) <= 0) return null;
  const least = over(times(times(sightWidth, share), 2), left);
  let at = depth.compare(least) >= 0 ? depth : larger(depth, upTo(least, step));
  for (; at.compare(under) < 0; at = upTo(sum(at, step), step)) {
    const needed = over(times(share, sum(sightWidth, times(at, 2))), times(sum(length(1), share), 2));
    const clearance = upTo(needed, step);
    const change = times(share, sum(sightWidth, times(less(at, clearance), 2)));
    if (less(at, times(clearance, 2)).compare(change) >= 0) return { clearance, depth: at };
  }
  return null;
}

/** Up to the next step. */
function upTo(value: Length, step: Length): Length {
  return times(step, over(value, step).ceil() as Length);
}
