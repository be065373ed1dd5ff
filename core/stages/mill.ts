import { MILL } from './cautions/milling.ts';
import type { StageFacts } from './stage-facts.ts';

/** Milling a blank to its three sizes: the first stage of every part. */
export const mill = {
  title: 'stage.mill',
  station: 'milling',
  of: 'part',
  settings: {
    length: { is: 'length', unproved: true },
    width: { is: 'length', measured: true },
    thickness: { is: 'length', measured: true, fine: true },
  },
  cautions: MILL,
} as const satisfies StageFacts;
