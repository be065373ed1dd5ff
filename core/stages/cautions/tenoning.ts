import type { Cautions } from './caution.ts';

/** What can hurt while a rail's shoulders are sawn. */
export const SHOULDER: Cautions = [
  { key: 'caution.shoulder.arched', from: ['hse-l114', 'common-practice'], of: 'arched' },
  { key: 'caution.shoulder.clamp', from: ['hse-l114', 'common-practice'], of: 'straight' },
  { key: 'caution.shoulder.stop', from: ['common-practice'] },
  { key: 'caution.shoulder.turn', from: ['osha-etool', 'osha-1910-213'] },
];

/** What can hurt while a tenon's cheeks are sawn. */
export const CHEEK: Cautions = [
  { key: 'caution.cheek.arched', from: ['hse-l114', 'common-practice'], of: 'arched' },
  { key: 'caution.cheek.bits', from: ['osha-etool'] },
  { key: 'caution.cheek.flat', from: ['common-practice'] },
  { key: 'caution.cheek.passes', from: ['osha-etool', 'common-practice'] },
];

/** What can hurt while a tenon's edges are sawn, the rail on edge. */
export const TENON: Cautions = [
  { key: 'caution.tenon.arched', from: ['hse-l114', 'common-practice'], of: 'arched' },
  { key: 'caution.tenon.edge', from: ['hse-l114', 'common-practice'], of: 'straight' },
  { key: 'caution.tenon.set', from: ['osha-etool', 'common-practice'] },
  { key: 'caution.tenon.bits', from: ['osha-etool'] },
  { key: 'caution.tenon.guard', from: ['osha-1910-213', 'hse-l114'] },
];
