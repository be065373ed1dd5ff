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
  steps: 'how.shoulder',
  cautions: SHOULDER,
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
  steps: 'how.cheek',
  pareSteps: 'how.cheek.pare',
  cautions: CHEEK,
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
  steps: 'how.tenon',
  midSteps: 'how.tenon.mid',
  cautions: TENON,
} as const satisfies StageFacts;

/** The haunch that stays beside the tenon. */
export const haunch = {
  title: 'stage.haunch',
  station: 'bench',
  of: 'part',
  settings: { length: LENGTH_DOWN, height: FINE_DOWN, pareTo: PARE_TO },
  pareSteps: 'how.haunch.pare',
  cautions: HAUNCH,
} as const satisfies StageFacts;
