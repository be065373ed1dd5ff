import { PARE } from './cautions/handwork.ts';
import { MORTISE } from './cautions/mortising.ts';
import { FOLLOWING_LENGTH, LENGTH_DOWN, LENGTH_UP, MAYBE_TOOL } from './setting.ts';
import type { StageFacts } from './stage-facts.ts';

/** Cutting a stile's mortises, outer edge down, bead still on; each place from its own end. */
export const mortise = {
  title: 'stage.mortise',
  station: 'mortiser',
  of: 'part',
  settings: {
    depthFromEdge: LENGTH_UP,
    depthFromGroove: LENGTH_UP,
    chisel: MAYBE_TOOL,
    fence: { is: 'length', maybe: true, rounds: 'down', fine: true },
  },
  place: {
    start: LENGTH_DOWN,
    stop: LENGTH_UP,
    length: FOLLOWING_LENGTH,
    plunges: { is: 'count', follows: true, maybe: true },
    /** The face that runs along the fence: one at every place, so that all mortises lie in one line. */
    faceToFence: { is: ['front', 'back'], ofPiece: true, maybe: true },
    /** Which of the two stops the end touches that the place is measured from, sight edge up, front away from you. */
    endStop: { is: ['left', 'right'], ofPiece: true, maybe: true },
  },
  cautions: MORTISE,
  steps: { usual: ['how.mortise'] },
} as const satisfies StageFacts;

/** Paring the mortises to the width of the groove. */
export const pare = {
  title: 'stage.pare',
  station: 'bench',
  of: 'part',
  settings: { width: { is: 'length', rounds: 'up', fine: true } },
  cautions: PARE,
  steps: { usual: ['how.pare'] },
} as const satisfies StageFacts;
