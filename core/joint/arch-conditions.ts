import { half, length, sign, times } from '../length/length.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import type { Findings } from './findings.ts';
import { leftOf } from './left-of.ts';
import type { Tooling } from './tooling.ts';

/** A rise over this share of the chord leaves short grain at the springing (common practice, no source). */
const SHORT_GRAIN = length(289, 1000);

/** The arch: at most a semicircle, between its flats, within reach of bearing and drum. */
export function archConditions(joint: Joint, tooling: Tooling, profile: ShopProfile, found: Findings): void {
  const { arc, spec } = joint;
  if (arc === null) return;
  if (sign(arc.flat) < 0)
    found.fault('arch-chord', 'arch.flat', {
      flat: arc.flat,
      chord: arc.chord,
      sightWidth: joint.sightWidth,
    });
  if (sign(arc.rise) <= 0) {
    found.fault('arch-rise', 'arch.rise');
    return;
  }
  if (sign(arc.chord) <= 0) {
    found.fault('arch-chord', 'arch.flat', {
      flat: arc.flat,
      chord: leftOf(arc.chord),
      sightWidth: leftOf(joint.sightWidth),
    });
    return;
  }
  if (times(arc.rise, 2).compare(arc.chord) > 0) {
    found.fault('arch-too-high', 'arch.rise', { rise: arc.rise, chord: arc.chord, most: half(arc.chord) });
    return;
  }
  if (arc.flat.compare(spec.bead) <= 0)
    found.warn('arch-flat', 'arch.flat', { flat: arc.flat, bead: spec.bead });
  if (arc.rise.compare(times(arc.chord, SHORT_GRAIN)) > 0)
    found.warn('arch-short-grain', 'arch.rise', { rise: arc.rise, chord: arc.chord });
  if (profile.bearingRadius.compare(arc.radius) > 0)
    found.warn('bearing', 'arch.rise', { bearing: profile.bearingRadius, radius: arc.radius });
  if (tooling.drum === null) found.warn('drum', 'arch.rise', { radius: arc.radius });
}
