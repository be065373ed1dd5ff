import { FINE_DOWN } from './setting.ts';
import type { StageFacts } from './stage-facts.ts';

const mitred = {
  sightEdge: { is: 'length', pared: 'mitre', rounds: 'down', gates: 'line' },
  shoulderLine: { is: 'length', follows: true, rounds: 'down' },
  height: FINE_DOWN,
  tilt: { is: 'angle' },
} as const;

/** Mitring both ends of a rail alike. */
export const mitre = {
  title: 'stage.mitre',
  station: 'table-saw',
  of: 'part',
  settings: mitred,
  gravest: 'caution.table-saw.3',
  steps: 'how.mitre',
  midSteps: 'how.mitre.mid',
} as const satisfies StageFacts;

/** A mitre of a stile, from the end that goes against the stop. */
export const mitreEnd = {
  station: 'table-saw',
  of: 'part',
  settings: { fromEnd: { is: ['top', 'bottom'] }, ...mitred },
  title: ['stage.mitre-bottom', 'stage.mitre-top', 'stage.mitre-mid-lower', 'stage.mitre-mid-upper'],
  namedAs: 'mitre',
  gravest: 'caution.table-saw.3',
  steps: 'how.mitre-end',
} as const satisfies StageFacts;
