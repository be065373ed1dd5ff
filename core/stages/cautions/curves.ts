import type { Cautions } from './caution.ts';

/** What can hurt while a rail's arch is sawn. */
export const ARCH: Cautions = [
  { key: 'caution.arch.hands', from: ['osha-etool', 'osha-1910-213', 'hse-wis-31'] },
  { key: 'caution.arch.blade', from: ['blade-widths'], needs: 'widestBlade' },
  { key: 'caution.arch.carrier', from: ['common-practice'] },
  { key: 'caution.arch.back', from: ['common-practice'] },
];

/** What can hurt while a panel's arched head is sawn. */
export const CUTOUT: Cautions = [
  { key: 'caution.cutout.guard', from: ['osha-etool', 'osha-1910-213', 'hse-wis-31'] },
  { key: 'caution.cutout.blade', from: ['blade-widths'], needs: 'widestBlade' },
  { key: 'caution.cutout.support', from: ['common-practice'] },
  { key: 'caution.cutout.waste', from: ['osha-etool', 'hse-wis-31'] },
];

/** What can hurt while the sawn arch is sanded. */
export const SMOOTH: Cautions = [
  { key: 'caution.smooth.feed', from: ['common-practice'] },
  { key: 'caution.smooth.fingers', from: ['common-practice'] },
  { key: 'caution.smooth.springing', from: ['common-practice'] },
  { key: 'caution.smooth.dust', from: ['hse-wis-23'] },
];
