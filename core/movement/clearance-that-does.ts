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
  /** What a panel of width 1 grows by from the day of glue-up to its wettest, and shrinks by to its driest; neither under 0. */
  readonly swells: Length;
  readonly shrinks: Length;
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
export function clearanceThatDoes({
  sightWidth,
  swells,
  shrinks,
  depth,
  under,
  step,
}: FitSought): PanelFit | null {
  // Swelling: 2q ≥ s(V + 2(d − q)), so q ≥ s(V + 2d) / (2(1 + s)). Shrinking: d − 2q ≥ r(V + 2(d − q)), so
  // d(1 − 2r) ≥ rV + 2q(1 − r). Both at their limits give d((1 + s)(1 − 2r) − 2s(1 − r)) = V(r(1 + s) + s(1 − r)).
  const one = length(1);
  const growing = sum(one, swells);
  const staying = less(one, shrinks);
  const left = less(times(growing, less(one, times(shrinks, 2))), times(times(swells, 2), staying));
  if (left.compare(0) <= 0) return null;
  const moving = sum(times(shrinks, growing), times(swells, staying));
  const least = over(times(sightWidth, moving), left);
  let at = depth.compare(least) >= 0 ? depth : larger(depth, upTo(least, step));
  for (; at.compare(under) < 0; at = upTo(sum(at, step), step)) {
    const needed = over(times(swells, sum(sightWidth, times(at, 2))), times(growing, 2));
    const clearance = upTo(needed, step);
    const dries = times(shrinks, sum(sightWidth, times(less(at, clearance), 2)));
    if (less(at, times(clearance, 2)).compare(dries) >= 0) return { clearance, depth: at };
  }
  return null;
}

/** Up to the next step. */
function upTo(value: Length, step: Length): Length {
  return times(step, over(value, step).ceil() as Length);
}
