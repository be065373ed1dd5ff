import type { Cautions } from './caution.ts';

/** What can hurt while the bead is stuck. An arched rail's is the cut most likely to cost a finger: it has its own. */
export const BEAD: Cautions = [
  { key: 'caution.bead.arched-carrier', from: ['hse-wis-18'], of: 'arched' },
  { key: 'caution.bead.arched-passes', from: ['hse-wis-18'], of: 'arched' },
  { key: 'caution.bead.arched-grain', from: ['hse-wis-18'], of: 'arched' },
  { key: 'caution.bead.arched-start', from: ['osha-3157', 'common-practice'], of: 'arched' },
  { key: 'caution.bead.feed', from: ['osha-3157', 'common-practice'], of: 'straight' },
  { key: 'caution.bead.feather', from: ['osha-1910-213'], of: 'straight' },
  { key: 'caution.bead.ends', from: ['hse-wis-18'], of: 'straight' },
  { key: 'caution.bead.short', from: ['common-practice'], of: 'straight' },
];

/** What can hurt while a groove is routed: an arched rail's, or any member's where the saw is not to groove. */
export const SLOT: Cautions = [
  { key: 'caution.slot.arched-carrier', from: ['hse-wis-18'], of: 'arched' },
  { key: 'caution.slot.arched-passes', from: ['hse-wis-18'], of: 'arched' },
  { key: 'caution.slot.arched-grain', from: ['hse-wis-18'], of: 'arched' },
  { key: 'caution.slot.arched-start', from: ['osha-3157', 'common-practice'], of: 'arched' },
  { key: 'caution.slot.hidden', from: ['common-practice'], of: 'straight' },
  { key: 'caution.slot.feather', from: ['osha-1910-213', 'osha-3157'], of: 'straight' },
  { key: 'caution.slot.passes', from: ['common-practice'], of: 'straight' },
  { key: 'caution.slot.short', from: ['common-practice'], of: 'straight' },
];

/**
 * What can hurt while a panel is raised. End grain first is how panels are raised at a table; of a router held in the hands
 * the eTool says the reverse.
 */
export const RAISE: Cautions = [
  { key: 'caution.raise.arched', from: ['hse-wis-18'], of: 'arched' },
  { key: 'caution.raise.trap', from: ['common-practice'] },
  { key: 'caution.raise.speed', from: ['osha-3157', 'common-practice'] },
  { key: 'caution.raise.depth', from: ['common-practice'] },
  { key: 'caution.raise.ends', from: ['common-practice'] },
  { key: 'caution.raise.hands', from: ['common-practice'] },
];
