import { half, larger, largestUpTo, type Length, less, sign, sum, times, ZERO } from '../length/length.ts';
import { length } from '../length/length.ts';
import { type Real, real, realOf } from '../length/real.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';

/** The tools that the shop would take for a door, and what follows from them. */
export interface Tooling {
  /** The widest hollow chisel not wider than the groove; null when the shop has none. */
  readonly chisel: Length | null;
  /** The widest dado narrower than the groove and not under half of it; one as wide as the groove where there is no such; null when there is neither. */
  readonly dado: Length | null;
  /** The largest drum that fits inside the arch; null when none does or there is no arch. */
  readonly drum: Length | null;
  /** Thickness of the tongue round a raised panel. */
  readonly tongue: Length;
  /** What the raising cutter takes off the panel's back; zero or less: the panel is not raised. */
  readonly raise: Length;
  readonly strip: StripSetting | null;
}

/** How high the saw blade stands for the stopped rip, and where it then cuts. */
export interface StripSetting {
  readonly bladeHeight: Length;
  /** How far ahead of the arbor the blade cuts at the table's level. */
  readonly reach: Real;
  /** How far the cut at the upper face lags behind the one at the table. */
  readonly lag: Real;
}

/** The tools for this door from what the shop has. */
export function toolingFor(joint: Joint, profile: ShopProfile): Tooling {
  const { spec } = joint;
  const tongue = less(spec.groove.width, profile.slidingFit);
  return {
    chisel: largestUpTo(profile.chisels, spec.groove.width),
    dado: dadoFor(spec.groove.width, profile.dadoWidths),
    drum: joint.arc === null ? null : largestUpTo(profile.drums, times(joint.arc.radius, 2)),
    tongue,
    raise: less(spec.panel.thickness, tongue),
    strip:
      sign(spec.bead) > 0 && profile.ways.strip === 'rip' && profile.stripStation === 'table-saw'
        ? stripSetting(spec.thickness, profile)
        : null,
  };
}

/**
 * Two passes, one with each face to the fence, set the walls by the fence whatever the blade: it is the widest that is
 * narrower than the groove and clears it in two. One as wide as the groove lets the second pass only widen it.
 */
function dadoFor(groove: Length, dados: readonly Length[]): Length | null {
  const narrower = largestUpTo(
    dados.filter((each) => each.compare(groove) < 0 && times(each, 2).compare(groove) >= 0),
    groove,
  );
  return narrower ?? dados.find((each) => each.equals(groove)) ?? null;
}

/** How far the blade stands above the upper face at least, in the job's units. */
export const CLEAR = { in: length(1, 8), mm: length(3) } as const;

/** reach = √(ρ² − (ρ − k)²), lag = reach − √(ρ² − (ρ − k + T)²) with the blade raised k: as the shop has it, at least T + 1/8 (3 mm). */
function stripSetting(thickness: Length, profile: ShopProfile): StripSetting {
  const { ripHeight } = profile.blade;
  const least = sum(thickness, CLEAR[profile.units]);
  const bladeHeight = ripHeight === null ? least : larger(least, ripHeight);
  const radius = half(profile.blade.diameter);
  const atTable = less(radius, bladeHeight);
  const atFace = sum(atTable, thickness);
  const reach = halfChord(radius, atTable);
  return { bladeHeight, reach, lag: real(reach - halfChord(radius, atFace)) };
}

/** Half a circle's chord at a distance from its centre: √(ρ² − x²); 0 where the chord misses the circle. */
function halfChord(radius: Length, distance: Length): Real {
  const square = less(times(radius, radius), times(distance, distance));
  return real(Math.sqrt(realOf(larger(square, ZERO))));
}
