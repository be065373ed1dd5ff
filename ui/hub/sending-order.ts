import { isDoorStage } from '#core/stages/stage-id.ts';
import type { Kept } from './kept-marks.ts';

/** Does a later mark stand on an earlier one: the same blank, or a stage of the whole door that it is part of? */
export function dependsOn(later: Kept, earlier: Kept): boolean {
  if (later.order <= earlier.order) return false;
  if (later.mark.code === earlier.mark.code) return true;
  const whole = isDoorStage(later.mark.stage) || isDoorStage(earlier.mark.stage);
  return whole && later.job === earlier.job && later.door === earlier.door;
}

/** All later marks that stand on one, directly or over others, in order. */
export function dependents(kept: readonly Kept[], on: Kept): Kept[] {
  const behind = [on];
  for (const each of kept)
    if (!behind.includes(each) && behind.some((before) => dependsOn(each, before))) behind.push(each);
  return behind.slice(1);
}

/** The marks that stand on a refused one, and wait until a person has settled it. */
export function heldBack(kept: readonly Kept[]): Kept[] {
  return kept.filter(({ refused }) => refused !== undefined).flatMap((each) => dependents(kept, each));
}

/** The mark to be sent next: the first that was not refused and stands on none that was. */
export function nextToSend(kept: readonly Kept[]): Kept | null {
  const held = heldBack(kept);
  return kept.find((each) => each.refused === undefined && !held.includes(each)) ?? null;
}
