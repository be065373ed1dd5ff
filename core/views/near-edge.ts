import type { ReadPart } from '../plan/part-name.ts';
import type { PlanPart } from '../plan/plan.ts';
import type { WordKey } from '../words/say.ts';
import { type Profile, profileOf } from './profile.ts';

/** Only the part of the section near the sight edge is drawn, so that bead and groove are large. */
const SHOWN = 4;

/** Section near the sight edge: at most so many groove depths of it, the rest broken off. */
export function nearEdge(part: PlanPart, depths = SHOWN): Profile {
  const profile = profileOf(part);
  const { width, grooveDepth, bead, thickness } = profile;
  const shown = Math.min(width, Math.max(depths * Math.max(grooveDepth, bead), thickness * 0.4 * depths));
  return { ...profile, width: shown };
}

/** Which edge of a rail is its sight edge; none of its own where both are, or on a panel. */
export function sightEdgeWord({ at }: ReadPart): WordKey | null {
  if (at === 'bottom') return 'drawing.upper-edge';
  return at === 'top' ? 'drawing.lower-edge' : null;
}
