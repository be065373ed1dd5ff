import { length, less, type Length, over, sum, times } from '../length/length.ts';
import { real, realOf } from '../length/real.ts';
import { changeAcross, decimalLength } from '../movement/change.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import type { Findings } from './findings.ts';

/** Whether the panel's swelling or shrinking over the shop's moisture range stays within its groove; when a species is given. */
export function movementConditions(joint: Joint, profile: ShopProfile, found: Findings): void {
  const { spec, panelHold: hold } = joint;
  const { species, sawn, clearance } = spec.panel;
  if (species === undefined) return;
  const { low, high } = profile.moisture;
  const width = sum(joint.sightWidth, times(hold, 2));
  const change = changeAcross(width, species, sawn ?? 'flat', decimalLength(high - low));
  const depth = spec.groove.depth;
  const need = roundedUp(over(change, 2), profile.units);
  const room = times(clearance, 2);
  if (change.compare(room) > 0)
    found.warn('panel-swells', 'panel.clearance', {
      low,
      high,
      change: real(realOf(change)),
      room,
      clearance: need,
    });
  const floating = less(hold, clearance);
  if (change.compare(floating) > 0) {
    const deeper = larger(depth, roundedUp(sum(change, times(clearance, 2)), profile.units));
    found.warn('panel-shrinks', 'groove.depth', {
      low,
      high,
      change: real(realOf(change)),
      room: floating,
      clearance,
      depth: deeper,
    });
  }
}

function larger(a: Length, b: Length): Length {
  return a.compare(b) >= 0 ? a : b;
}

/** Up to the next 1/32 in, or 1/2 mm: a clearance that can be set. */
function roundedUp(value: Length, units: 'in' | 'mm'): Length {
  const step = units === 'in' ? 32 : 2;
  return over(times(value, step).ceil() as Length, length(step));
}
