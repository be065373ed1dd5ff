import { CUTOUT } from './cautions/curves.ts';
import { FINISH } from './cautions/handwork.ts';
import { RAISE } from './cautions/routing.ts';
import { FOLLOWING_LENGTH, FOLLOWING_REAL, LENGTH, LENGTH_DOWN } from './setting.ts';
import type { StageFacts } from './stage-facts.ts';

/** Sawing a panel's arched head, concentric with the rail's arch. */
export const cutout = {
  title: 'stage.cutout',
  station: 'band-saw',
  of: 'part',
  settings: {
    width: { is: 'length', follows: true, rounds: 'down' },
    height: { is: 'length', follows: true, rounds: 'down' },
    sideHeight: LENGTH_DOWN,
    radius: { is: 'length', pared: 'cutout', rounds: 'up' },
    rise: FOLLOWING_LENGTH,
    chord: FOLLOWING_REAL,
    flat: FOLLOWING_REAL,
    pivot: LENGTH,
    centre: LENGTH,
  },
  cautions: CUTOUT,
  steps: { usual: ['how.cutout'] },
  arches: true,
} as const satisfies StageFacts;

/** Raising a panel from its back, so that a tongue stays. */
export const raise = {
  title: 'stage.raise',
  station: 'router-table',
  of: 'part',
  settings: {
    tongue: { is: 'length', follows: true, rounds: 'down', fine: true },
    depth: { is: 'length', rounds: 'up', fine: true },
    band: LENGTH,
  },
  cautions: RAISE,
  steps: { usual: ['how.raise'], archedPanel: ['how.raise', 'how.raise.arched'] },
} as const satisfies StageFacts;

/** Finishing a panel before it is glued up, so that no bare wood shows when it shrinks. */
export const finish = {
  title: 'stage.finish',
  station: 'bench',
  of: 'part',
  settings: {},
  nothingToSet: 'nothing.finish',
  cautions: FINISH,
} as const satisfies StageFacts;
