import { type Length, length } from '../length/length.ts';
import { printLength } from '../length/print-length.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';

/** A band saw blade's width, and the least radius that it goes round. */
interface BladeWidth {
  readonly width: Length;
  readonly least: Length;
}

/**
 * Blades from the widest down, and the least radius of each, from memory: tables differ by a little, and the saw's own comes
 * first. None wider is used for a curve. In millimetres as blades are sold, each radius up to the next whole one.
 */
const BLADES: Readonly<Record<Units, readonly BladeWidth[]>> = {
  in: [
    { width: length(1, 2), least: length(5, 2) },
    { width: length(3, 8), least: length(23, 16) },
    { width: length(1, 4), least: length(5, 8) },
    { width: length(1, 8), least: length(3, 16) },
  ],
  mm: [
    { width: length(13), least: length(64) },
    { width: length(10), least: length(37) },
    { width: length(6), least: length(16) },
    { width: length(3), least: length(5) },
  ],
};

/** The widest band saw blade that goes round a radius as the plan prints it; null where the curve is too tight for any. */
export function widestBlade(radius: string, units: Units): string | null {
  const round = readPrinted(radius, units);
  const blade = BLADES[units].find(({ least }) => least.compare(round) <= 0);
  return blade === undefined ? null : printLength(blade.width);
}
