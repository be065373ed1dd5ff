import { BEAD, SLOT } from './cautions/routing.ts';
import { GROOVE } from './cautions/sawing.ts';
import { FINE_DOWN, LENGTH_UP, MAYBE_TOOL } from './setting.ts';
import type { StageFacts } from './stage-facts.ts';

/** Sticking the bead, front down on the router table. */
export const bead = {
  title: 'stage.bead',
  station: 'router-table',
  of: 'part',
  settings: {
    bead: { is: 'length', tool: true },
    fillet: { is: 'length', follows: true, fine: true },
    cutterHeight: FINE_DOWN,
  },
  cautions: BEAD,
  steps: {
    usual: ['how.bead.set', 'how.bead'],
    mid: ['how.bead.set', 'how.bead.mid'],
    arched: ['how.bead.set', 'how.bead.arched'],
  },
} as const satisfies StageFacts;

/** Plowing the groove of a straight member: two passes, one with each face to the fence. */
export const groove = {
  title: 'stage.groove',
  station: 'table-saw',
  of: 'part',
  settings: {
    width: { is: 'length', follows: true, measured: true, fine: true },
    depth: LENGTH_UP,
    fence: FINE_DOWN,
    blade: MAYBE_TOOL,
  },
  cautions: GROOVE,
  steps: {
    usual: ['how.groove.set', 'how.groove'],
    mid: ['how.groove.set', 'how.groove.mid'],
  },
  grooves: true,
} as const satisfies StageFacts;

/** Routing the groove of an arched rail, front down only. */
export const slot = {
  title: 'stage.slot',
  station: 'router-table',
  of: 'part',
  settings: {
    width: { is: 'length', measured: true, fine: true },
    depth: LENGTH_UP,
    cutterHeight: FINE_DOWN,
  },
  cautions: SLOT,
  steps: {
    usual: ['how.slot.set', 'how.slot'],
    mid: ['how.slot.set', 'how.slot.mid'],
    arched: ['how.slot.set', 'how.slot.arched'],
  },
  grooves: true,
} as const satisfies StageFacts;
