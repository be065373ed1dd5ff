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
  cautions: MITRE,
  steps: {
    usual: ['how.mitre.set', 'how.mitre', 'how.mitre.pare'],
    mid: ['how.mitre.set', 'how.mitre', 'how.mitre.mid', 'how.mitre.pare'],
    arched: ['how.mitre.set', 'how.flats', 'how.mitre', 'how.mitre.pare'],
  },
} as const satisfies StageFacts;

/** A mitre of a stile, from the end that goes against the stop. */
export const mitreEnd = {
  station: 'table-saw',
  of: 'part',
  settings: { fromEnd: { is: ['top', 'bottom'] }, ...mitred },
  title: ['stage.mitre-bottom', 'stage.mitre-top', 'stage.mitre-mid-lower', 'stage.mitre-mid-upper'],
  namedAs: 'mitre',
  cautions: MITRE_END,
  steps: {
    usual: ['how.mitre.set', 'how.mitre.line', 'how.mitre.end'],
    lower: ['how.mitre.lower', 'how.mitre.set', 'how.mitre.line', 'how.mitre.mid-end'],
    upper: ['how.mitre.upper', 'how.mitre.set', 'how.mitre.line', 'how.mitre.mid-end'],
  },
} as const satisfies StageFacts;
