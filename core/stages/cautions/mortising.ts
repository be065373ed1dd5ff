import type { Cautions } from './caution.ts';

/** What can hurt while mortises are cut. */
export const MORTISE: Cautions = [
  { key: 'caution.mortise.clamped', from: ['common-practice'] },
  { key: 'caution.mortise.turning', from: ['osha-etool'] },
  { key: 'caution.mortise.jams', from: ['common-practice'] },
  { key: 'caution.mortise.depth', from: ['common-practice'] },
  { key: 'caution.mortise.long', from: ['common-practice'] },
];
