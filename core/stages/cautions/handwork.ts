import type { Cautions } from './caution.ts';

/** What can hurt while mortises are pared. */
export const PARE: Cautions = [
  { key: 'caution.pare.vise', from: ['common-practice'] },
  { key: 'caution.pare.sharp', from: ['common-practice'] },
  { key: 'caution.pare.wrist', from: ['common-practice'] },
];

/** What can hurt while mitres are pared to the line. */
export const CLEAN: Cautions = [
  { key: 'caution.clean.block', from: ['common-practice'] },
  { key: 'caution.clean.thin', from: ['common-practice'] },
  { key: 'caution.clean.tip', from: ['common-practice'] },
];

/** What can hurt while a haunch is cut. */
export const HAUNCH: Cautions = [
  { key: 'caution.haunch.saw', from: ['common-practice'] },
  { key: 'caution.haunch.pare', from: ['common-practice'] },
  { key: 'caution.haunch.split', from: ['common-practice'] },
];

/** What can hurt while a panel is finished. */
export const FINISH: Cautions = [
  { key: 'caution.finish.rags', from: ['osha-1910-107', 'common-practice'] },
  { key: 'caution.finish.air', from: ['common-practice'] },
  { key: 'caution.finish.skin', from: ['common-practice'] },
];
