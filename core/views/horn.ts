import { realOf } from '../length/real.ts';
import type { Units } from '../length/units.ts';
import { asBuilt, hornsOf } from '../plan/as-built.ts';
import type { DoorValues, PlanDoor, PlanPart } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { drawn } from './drawn.ts';

/** How far a door's stiles stand over its rails at each end, as its trimming has it. */
export function hornOf(door: PlanDoor): number {
  return drawn(stageOf(door, 'trim')?.settings.horn ?? '0');
}

/** How far a stile stands over the door's top, to draw with: other than the horn where its own length was measured. */
export function topHornOf(door: PlanDoor, stile: PlanPart, units: Units): number {
  return realOf(hornsOf(door, stile, units).top);
}

/** A door's size before it is trimmed, horns not counted, to draw with. */
export function drawnAsBuilt(
  values: DoorValues,
  units: Units,
): { readonly width: number; readonly height: number } {
  const { width, height } = asBuilt(values, units);
  return { width: realOf(width), height: realOf(height) };
}
