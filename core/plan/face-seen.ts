import { readPart } from './part-name.ts';
import type { PlanPart } from './plan.ts';

/** How a stile lies, its length from left to right. */
export interface Lie {
  /** The end at the left: the one against the stop. */
  readonly leftEnd: 'top' | 'bottom';
  /** Which edge is above: the bead's or the outer one. */
  readonly above: 'bead' | 'outer';
}

/** The face that is seen when a stile lies so: turning it end for end shows the other one. */
export function faceSeen(part: PlanPart, lie: Lie): 'front' | 'back' {
  const left = readPart(part).at === 'left';
  const turned = (lie.leftEnd === 'top') === (lie.above === 'bead');
  return left === turned ? 'front' : 'back';
}
