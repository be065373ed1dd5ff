import type { Cautions } from './caution.ts';

/** What can hurt while a blank is milled. */
export const MILL: Cautions = [
  { key: 'caution.mill.hands', from: ['hse-wis-17'] },
  { key: 'caution.mill.planer', from: ['common-practice'] },
  { key: 'caution.mill.knots', from: ['common-practice'] },
];
