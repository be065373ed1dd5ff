import { MILL } from './cautions/milling.ts';
import type { StageFacts } from './stage-facts.ts';

/** Milling a blank to its three sizes: the first stage of every part. */
export const mill = {
  title: 'stage.mill',
  station: 'milling',
  of: 'part',
  settings: {
    length: { is: 'length', unproved: true },
    width: { is: 'length', measured: true },
    thickness: { is: 'length', measured: true, fine: true },
  },
  cautions: MILL,
  steps: {
    usual: ['how.mill.rail', 'how.mill', 'how.mill.mark-rail'],
    stile: ['how.mill.stile', 'how.mill', 'how.mill.mark-stile'],
    mid: ['how.mill.rail', 'how.mill', 'how.mill.mark-mid'],
    arched: ['how.mill.arched', 'how.mill', 'how.mill.mark-rail'],
    panel: ['how.mill.panel', 'how.mill', 'how.mill.mark-panel'],
    archedPanel: ['how.mill.panel-arched', 'how.mill', 'how.mill.mark-panel'],
  },
} as const satisfies StageFacts;
