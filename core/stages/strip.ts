import { CLEAN } from './cautions/handwork.ts';
import { NOTCH, STRIP } from './cautions/sawing.ts';
import { FINE_DOWN, FOLLOWING_LENGTH, LENGTH_UP } from './setting.ts';
import type { StageFacts } from './stage-facts.ts';

/** Crosscuts side by side that take the bead away: between the mitres of a mid rail, or from an end to that end's mitre. */
export const notch = {
  station: 'table-saw',
  of: 'part',
  settings: {
    fromEnd: { is: ['top', 'bottom'] },
    from: LENGTH_UP,
    to: { is: 'length', rounds: 'down', gates: 'line' },
    length: FOLLOWING_LENGTH,
    height: FINE_DOWN,
  },
  title: ['stage.notch-mid', 'stage.notch-bottom', 'stage.notch-top'],
  cautions: NOTCH,
  steps: {
    usual: ['how.notch.set', 'how.notch', 'how.notch.pare'],
    atEnd: ['how.notch.set', 'how.notch.end', 'how.notch.pare'],
  },
} as const satisfies StageFacts;

/** The stopped rip that takes the bead away behind the rails, from each end to that end's shoulder line. */
export const strip = {
  title: 'stage.strip',
  station: 'table-saw',
  of: 'part',
  settings: {
    fence: { is: 'length', pared: 'fence', rounds: 'up', fine: true },
    bladeHeight: { is: 'length', maybe: true, fine: true },
    reach: { is: 'real', maybe: true },
    lag: { is: 'real', follows: true, maybe: true },
  },
  place: {
    run: { is: 'length', pared: 'stop', rounds: 'down', gates: 'line' },
    faceUp: { is: ['front', 'back'] },
  },
  cautions: STRIP,
  steps: {
    usual: ['how.strip'],
    lacking: { setting: 'reach', steps: ['how.strip.band'] },
  },
} as const satisfies StageFacts;

/** Paring mitres and what the cuts left to the line. */
export const clean = {
  title: 'stage.clean',
  station: 'bench',
  of: 'part',
  settings: {},
  cautions: CLEAN,
  steps: {
    usual: ['how.clean', 'how.clean.rail', 'how.clean.rail-shoulder'],
    stile: ['how.clean', 'how.clean.stile'],
    mid: ['how.clean', 'how.clean.mid', 'how.clean.rail-shoulder'],
  },
} as const satisfies StageFacts;
