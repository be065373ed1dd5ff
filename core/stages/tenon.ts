import { HAUNCH } from './cautions/handwork.ts';
import { CHEEK, SHOULDER, TENON } from './cautions/tenoning.ts';
import { FINE_DOWN, LENGTH, LENGTH_DOWN, PARE_TO } from './setting.ts';
import type { StageFacts } from './stage-facts.ts';

/** The shoulders of a rail's faces. */
export const shoulder = {
  title: 'stage.shoulder',
  station: 'table-saw',
  of: 'part',
  settings: { stop: { is: 'length', gates: 'line' }, height: FINE_DOWN },
  cautions: SHOULDER,
  steps: {
    usual: ['how.shoulder.set', 'how.shoulder'],
    arched: ['how.shoulder.set', 'how.shoulder.arched', 'how.shoulder'],
  },
} as const satisfies StageFacts;

/** The tenon's cheeks: a wall off each face. */
export const cheek = {
  title: 'stage.cheek',
  station: 'table-saw',
  of: 'part',
  settings: {
    height: { is: 'length', rounds: 'down', fine: true, gates: 'push' },
    thickness: { is: 'length', follows: true, fine: true },
    pareTo: PARE_TO,
  },
  cautions: CHEEK,
  steps: {
    usual: ['how.cheek.set', 'how.cheek'],
    arched: ['how.cheek.set', 'how.shoulder.arched', 'how.cheek'],
    pareTo: ['how.cheek.pare'],
  },
} as const satisfies StageFacts;

/** The tenon's edges; a mid rail has two inner ones. */
export const tenon = {
  title: 'stage.tenon',
  station: 'table-saw',
  of: 'part',
  settings: {
    width: { is: 'length', follows: true, fine: true },
    outerHeight: { is: 'length', maybe: true, rounds: 'down', fine: true },
    outerStop: { is: 'length', maybe: true, rounds: 'down' },
    innerHeight: FINE_DOWN,
    innerStop: LENGTH,
  },
  cautions: TENON,
  steps: {
    usual: ['how.tenon.outer', 'how.tenon.inner', 'how.tenon.test', 'how.tenon'],
    mid: ['how.tenon.mid', 'how.tenon.test', 'how.tenon.mid-ends'],
    arched: ['how.flats', 'how.tenon.outer', 'how.tenon.inner', 'how.tenon.test', 'how.tenon'],
    wide: ['how.tenon.wide'],
  },
} as const satisfies StageFacts;

/** The haunch that stays beside the tenon. */
export const haunch = {
  title: 'stage.haunch',
  station: 'bench',
  of: 'part',
  settings: { length: LENGTH_DOWN, height: FINE_DOWN, pareTo: PARE_TO },
  cautions: HAUNCH,
  steps: { usual: ['how.haunch'], pareTo: ['how.haunch.pare'] },
} as const satisfies StageFacts;
