import type { Cautions } from './caution.ts';

/** What can hurt while a door is put together dry. */
export const DRYFIT: Cautions = [
  { key: 'caution.dryfit.fingers', from: ['common-practice'] },
  { key: 'caution.dryfit.force', from: ['common-practice'] },
  { key: 'caution.dryfit.lift', from: ['common-practice'] },
];

/** What can hurt while a door is glued up. */
export const GLUE: Cautions = [
  { key: 'caution.glue.lift', from: ['common-practice'] },
  { key: 'caution.glue.clamps', from: ['common-practice'] },
  { key: 'caution.glue.skin', from: ['common-practice'] },
];

/** What can hurt while a door is trimmed to its opening. */
export const TRIM: Cautions = [
  { key: 'caution.trim.fall', from: ['common-practice'] },
  { key: 'caution.trim.tool', from: ['common-practice'] },
  { key: 'caution.trim.horns', from: ['common-practice'] },
  { key: 'caution.trim.hang', from: ['common-practice'] },
];
