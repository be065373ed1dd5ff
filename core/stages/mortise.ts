import { FOLLOWING_LENGTH, LENGTH, MAYBE_LENGTH } from './setting.ts';
import type { StageFacts } from './stage-facts.ts';

/** Cutting a stile's mortises, outer edge down, bead still on; each place from its own end. */
export const mortise = {
  title: 'stage.mortise',
  station: 'mortiser',
  of: 'part',
  settings: { depthFromEdge: LENGTH, depthFromGroove: LENGTH, chisel: MAYBE_LENGTH, fence: MAYBE_LENGTH },
  place: {
    start: LENGTH,
    stop: LENGTH,
    length: FOLLOWING_LENGTH,
    plunges: { is: 'count', follows: true, maybe: true },
  },
} as const satisfies StageFacts;

/** Paring the mortises to the width of the groove. */
export const pare = {
  title: 'stage.pare',
  station: 'bench',
  of: 'part',
  settings: { width: LENGTH },
} as const satisfies StageFacts;
