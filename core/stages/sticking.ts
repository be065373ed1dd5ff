import { FOLLOWING_LENGTH, LENGTH, MAYBE_LENGTH } from './setting.ts';
import type { StageFacts } from './stage-facts.ts';

/** Sticking the bead, front down on the router table. */
export const bead = {
  title: 'stage.bead',
  station: 'router-table',
  of: 'part',
  settings: { bead: LENGTH, fillet: FOLLOWING_LENGTH, cutterHeight: LENGTH },
} as const satisfies StageFacts;

/** Plowing the groove of a straight member: two passes, one with each face to the fence. */
export const groove = {
  title: 'stage.groove',
  station: 'table-saw',
  of: 'part',
  settings: {
    width: { is: 'length', follows: true, measured: true },
    depth: LENGTH,
    fence: LENGTH,
    blade: MAYBE_LENGTH,
  },
  steps: 'how.groove',
  midSteps: 'how.groove.mid',
} as const satisfies StageFacts;

/** Routing the groove of an arched rail, front down only. */
export const slot = {
  title: 'stage.slot',
  station: 'router-table',
  of: 'part',
  settings: { width: { is: 'length', measured: true }, depth: LENGTH, cutterHeight: LENGTH },
  steps: 'how.slot',
  midSteps: 'how.slot.mid',
} as const satisfies StageFacts;
