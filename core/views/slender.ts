import type { PlanDoor } from '../plan/plan.ts';
import { drawn } from './drawn.ts';

/** From so many times its width on a door is slender. */
const SLENDER = 2.2;

/** Is a door so tall and narrow that a drawing of it is as large as its room is high? */
export function isSlender({ values }: PlanDoor): boolean {
  return drawn(values.finishedHeight) > drawn(values.finishedWidth) * SLENDER;
}
