import { FOLLOWING_LENGTH, LENGTH, MAYBE_LENGTH } from './setting.ts';
import type { StageFacts } from './stage-facts.ts';

/** The shoulders of a rail's faces. */
export const shoulder = {
  title: 'stage.shoulder',
  station: 'table-saw',
  of: 'part',
  settings: { stop: { is: 'length', gates: 'line' }, height: LENGTH },
  steps: 'how.shoulder',
} as const satisfies StageFacts;

/** The tenon's cheeks: a wall off each face. */
export const cheek = {
  title: 'stage.cheek',
  station: 'table-saw',
  of: 'part',
  settings: { height: { is: 'length', gates: 'push' }, thickness: FOLLOWING_LENGTH },
  steps: 'how.cheek',
} as const satisfies StageFacts;

/** The tenon's edges; a mid rail has two inner ones. */
export const tenon = {
  title: 'stage.tenon',
  station: 'table-saw',
  of: 'part',
  settings: {
    width: FOLLOWING_LENGTH,
    outerHeight: MAYBE_LENGTH,
    outerStop: MAYBE_LENGTH,
    innerHeight: LENGTH,
    innerStop: LENGTH,
  },
  steps: 'how.tenon',
  midSteps: 'how.tenon.mid',
} as const satisfies StageFacts;

/** The haunch that stays beside the tenon. */
export const haunch = {
  title: 'stage.haunch',
  station: 'bench',
  of: 'part',
  settings: { length: LENGTH, height: LENGTH },
} as const satisfies StageFacts;
