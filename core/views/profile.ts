import type { PlanPart } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { drawn } from './drawn.ts';

/** The cross-section that a frame member has in the end, from its own stages. 0 where it has none. */
export interface Profile {
  readonly width: number;
  readonly thickness: number;
  readonly length: number;
  readonly bead: number;
  readonly fillet: number;
  readonly wall: number;
  readonly grooveWidth: number;
  readonly grooveDepth: number;
}

/** The cross-section of a frame member from its printed plan; lengths in the job’s units, 0 where the part has no such cut. */
export function profileOf(part: PlanPart): Profile {
  const bead = stageOf(part, 'bead')?.settings;
  return {
    width: drawn(part.width),
    thickness: drawn(part.thickness),
    length: drawn(part.length),
    bead: bead === undefined ? 0 : drawn(bead.bead),
    fillet: bead === undefined ? 0 : drawn(bead.fillet),
    ...grooveOf(part),
  };
}

/** The groove as it is plowed on the saw or routed under an arch. */
function grooveOf(part: PlanPart): Pick<Profile, 'wall' | 'grooveWidth' | 'grooveDepth'> {
  const groove = stageOf(part, 'groove')?.settings;
  const slot = stageOf(part, 'slot')?.settings;
  const cut = groove ?? slot;
  const wall = groove?.fence ?? slot?.cutterHeight;
  return {
    wall: wall === undefined ? 0 : drawn(wall),
    grooveWidth: cut === undefined ? 0 : drawn(cut.width),
    grooveDepth: cut === undefined ? 0 : drawn(cut.depth),
  };
}
