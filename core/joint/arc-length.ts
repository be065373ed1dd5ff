import { type Real, real, realOf } from '../length/real.ts';
import type { Arc } from './derive.ts';

/** Length along the arch: 2R·asin(C/2R). */
export function irrationalArc(arc: Pick<Arc, 'radius' | 'chord'>): Real {
  const radius = realOf(arc.radius);
  return real(2 * radius * Math.asin(Math.min(1, realOf(arc.chord) / (2 * radius))));
}
