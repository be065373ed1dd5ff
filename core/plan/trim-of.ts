import { eachSide, type EachSide } from './each-side.ts';
import type { DoorValues } from './plan.ts';

/** What comes off each side of a door as planned, horns not counted. Plans kept by older versions say it for both sides alike. */
export function trimOf({
  trim,
  trimEachSide = '0',
  trimEachEnd = '0',
}: Pick<DoorValues, 'trim' | 'trimEachSide' | 'trimEachEnd'>): EachSide<string> {
  return trim ?? eachSide((side) => (side === 'left' || side === 'right' ? trimEachSide : trimEachEnd));
}
