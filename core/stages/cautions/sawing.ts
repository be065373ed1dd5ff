import type { Cautions } from './caution.ts';

/** What can hurt while a groove is sawn. */
export const GROOVE: Cautions = [
  { key: 'caution.groove.guard', from: ['osha-1910-213', 'hse-l114'] },
  { key: 'caution.groove.hidden', from: ['osha-etool', 'osha-1910-213'] },
  { key: 'caution.groove.lawful', from: ['hse-l114', 'hse-wis-16'] },
  { key: 'caution.groove.tips', from: ['common-practice'] },
  { key: 'caution.groove.dado', from: ['common-practice'] },
];

/** What can hurt while a mitre is sawn at both ends of a rail. */
export const MITRE: Cautions = [
  { key: 'caution.mitre.arched', from: ['common-practice'], of: 'arched' },
  { key: 'caution.mitre.clamp', from: ['osha-etool', 'common-practice'], of: 'straight' },
  { key: 'caution.mitre.fence', from: ['common-practice'] },
  { key: 'caution.mitre.clear', from: ['common-practice'] },
  { key: 'caution.mitre.wait', from: ['osha-etool'] },
];

/** What can hurt while a stile is mitred. */
export const MITRE_END: Cautions = [
  { key: 'caution.mitre-end.long', from: ['osha-etool', 'common-practice'] },
  { key: 'caution.mitre-end.fence', from: ['common-practice'] },
  { key: 'caution.mitre-end.lean', from: ['common-practice'] },
  { key: 'caution.mitre-end.clear', from: ['common-practice'] },
];

/** What can hurt while the bead is notched away. */
export const NOTCH: Cautions = [
  { key: 'caution.notch.bits', from: ['osha-etool'] },
  { key: 'caution.notch.square', from: ['osha-1910-213', 'hse-wis-16'] },
  { key: 'caution.notch.clamp', from: ['common-practice'] },
  { key: 'caution.notch.tired', from: ['common-practice'] },
];

/** What can hurt while the bead is ripped away: at the table saw with its stopped cut, or at a band saw. */
export const STRIP: Cautions = [
  { key: 'caution.strip.stop', from: ['osha-etool', 'common-practice'] },
  { key: 'caution.strip.bare', from: ['osha-etool', 'common-practice'], needs: 'bladeHeight' },
  { key: 'caution.strip.beside', from: ['common-practice'] },
  { key: 'caution.strip.switch', from: ['osha-1910-213', 'common-practice'] },
  { key: 'caution.strip.hold', from: ['common-practice'] },
  { key: 'caution.strip.band-hands', from: ['osha-etool', 'hse-wis-31'], at: 'band-saw' },
  { key: 'caution.strip.band-stop', from: ['osha-etool', 'common-practice'], at: 'band-saw' },
  { key: 'caution.strip.band-drift', from: ['common-practice'], at: 'band-saw' },
  { key: 'caution.strip.band-support', from: ['common-practice'], at: 'band-saw' },
];
