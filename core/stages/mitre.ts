import { MITRE, MITRE_END } from './cautions/sawing.ts';
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
  steps: 'how.mitre',
  midSteps: 'how.mitre.mid',
  cautions: MITRE,
} as const satisfies StageFacts;

/** A mitre of a stile, from the end that goes against the stop. */
export const mitreEnd = {
  station: 'table-saw',
  of: 'part',
  settings: { fromEnd: { is: ['top', 'bottom'] }, ...mitred },
  title: ['stage.mitre-bottom', 'stage.mitre-top', 'stage.mitre-mid-lower', 'stage.mitre-mid-upper'],
  namedAs: 'mitre',
  steps: 'how.mitre-end',
  cautions: MITRE_END,
} as const satisfies StageFacts;
