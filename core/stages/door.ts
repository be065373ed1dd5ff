import { DRYFIT, GLUE, TRIM } from './cautions/door.ts';
import { FOLLOWING_LENGTH, LENGTH, MAYBE_LENGTH_DOWN } from './setting.ts';
import type { StageFacts } from './stage-facts.ts';

/** Putting a door together dry. */
export const dryfit = {
  title: 'stage.dryfit',
  station: 'assembly',
  of: 'door',
  settings: {},
  steps: { usual: ['how.dryfit'] },
  gathers: true,
  cautions: DRYFIT,
} as const satisfies StageFacts;

/** Gluing a door up, its panel free in the groove. */
export const glue = {
  title: 'stage.glue',
  station: 'assembly',
  of: 'door',
  settings: { diagonal: { is: 'real' } },
  steps: { usual: ['how.glue'] },
  closes: true,
  cautions: GLUE,
} as const satisfies StageFacts;

/** Trimming a door to its opening. */
export const trim = {
  title: 'stage.trim',
  station: 'fitting',
  of: 'door',
  settings: {
    horn: LENGTH,
    trimEachSide: MAYBE_LENGTH_DOWN,
    trimLeft: MAYBE_LENGTH_DOWN,
    trimRight: MAYBE_LENGTH_DOWN,
    trimEachEnd: MAYBE_LENGTH_DOWN,
    trimBottom: MAYBE_LENGTH_DOWN,
    trimTop: MAYBE_LENGTH_DOWN,
    finishedWidth: FOLLOWING_LENGTH,
    finishedHeight: FOLLOWING_LENGTH,
  },
  steps: { usual: ['how.trim'] },
  fits: true,
  finishes: true,
  cautions: TRIM,
} as const satisfies StageFacts;
