import { half, type Length, sum } from '../length/length.ts';
import { eachSide, type EachSide, type Side } from '../plan/each-side.ts';
import type { DoorSpec } from './job.ts';

/** What comes off each side of a door: half the oversize, and that side's reveal. Horns are not counted. */
export function trimOfSides({ oversize, reveal }: Pick<DoorSpec, 'oversize' | 'reveal'>): EachSide<Length> {
  return eachSide((side) => sum(half(oversize[acrossOf(side)]), reveal[side]));
}

/** The size of a door that a side bounds. */
export function acrossOf(side: Side): 'width' | 'height' {
  return side === 'left' || side === 'right' ? 'width' : 'height';
}
