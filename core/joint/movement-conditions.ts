import { larger, length, less, type Length, smaller, sum, times, ZERO } from '../length/length.ts';
import { printReal, real, realOf } from '../length/real.ts';
import { showValue, shownText } from '../length/reading.ts';
import { typeLength } from '../length/type-length.ts';
import { changeAcross, decimalLength } from '../movement/change.ts';
import { clearanceThatDoes, type PanelFit } from '../movement/clearance-that-does.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import type { Findings, Found } from './findings.ts';

/** What a clearance and a groove are set to: 1/32 in, 1/2 mm. */
const STEPS = { in: length(1, 32), mm: length(1, 2) } as const;

/**
 * What the panel does from the day when it is glued in: swelling to the wettest it comes to it must stay within twice its
 * clearance, shrinking to the driest within its hold; when a species is given. A floating panel may lie to one side, and so
 * lose no more than p − q; one that is pinned at its centre 2p.
 */
export function movementConditions(joint: Joint, profile: ShopProfile, found: Findings): void {
  const { spec, panelHold: hold, sightWidth } = joint;
  const { species, sawn, clearance } = spec.panel;
  if (species === undefined) return;
  const { atBuild, low, high } = profile.moisture;
  const by = (points: number) =>
    changeAcross(length(1), species, sawn ?? 'flat', decimalLength(Math.max(0, points)));
  const shares = { swells: by(high - atBuild), shrinks: by(atBuild - low) };
  const width = sum(sightWidth, times(hold, 2));
  const [swelling, shrinking] = [times(shares.swells, width), times(shares.shrinks, width)];
  const free = times(clearance, 2);
  const floating = larger(less(hold, clearance), ZERO);
  const swells = passes(swelling, free, profile);
  const shrinks = passes(shrinking, floating, profile);
  if (!swells && !shrinks) return;
  const { depth } = spec.groove;
  const fit = clearanceThatDoes({
    sightWidth,
    ...shares,
    depth,
    under: deepestGroove(joint),
    step: STEPS[profile.units],
  });
  const told = (change: Length) => ({
    atBuild,
    low,
    high,
    change: real(realOf(change)),
    ...fit,
    remedy: remedy(fit, depth),
  });
  if (swells) found.warn('panel-swells', 'panel.clearance', { ...told(swelling), room: free });
  if (shrinks)
    found.warn('panel-shrinks', 'groove.depth', {
      ...told(shrinking),
      room: floating,
      pinned: times(hold, 2),
    });
}

/** Is a movement over its room, and told as another number than that? What reads alike is no warning. */
function passes(change: Length, room: Length, { units }: ShopProfile): boolean {
  if (change.compare(room) <= 0) return false;
  const told = showValue(printReal(realOf(change)), units);
  return shownText({ ...told, near: false }) !== typeLength(room, units);
}

/** What a groove must stay under: it leaves a tenon, and something behind it in every member once the door is trimmed. */
function deepestGroove({ spec, narrowStile, trimEachSide, trimEachEnd, midRails }: Joint): Length {
  return [
    less(narrowStile, trimEachSide),
    less(spec.topRail.width, trimEachEnd),
    less(spec.bottomRail.width, trimEachEnd),
    ...midRails.map(({ width }) => times(width, length(1, 2))),
  ].reduce(smaller, sum(spec.bead, spec.tenon.length));
}

function remedy(fit: PanelFit | null, depth: Length): Found {
  if (fit === null) return { words: 'remedy.none' };
  return { words: fit.depth.equals(depth) ? 'remedy.clearance' : 'remedy.groove', figures: { ...fit } };
}
