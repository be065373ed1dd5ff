import type { PlanDoor } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { drawn } from './drawn.ts';

/** How far a door's stiles stand over its rails at each end, as its trimming has it. */
export function hornOf(door: PlanDoor): number {
  return drawn(stageOf(door, 'trim')?.settings.horn ?? '0');
}
