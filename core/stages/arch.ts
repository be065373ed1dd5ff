import { ARCH, SMOOTH } from './cautions/curves.ts';
import { FOLLOWING_LENGTH, FOLLOWING_REAL, LENGTH, MAYBE_TOOL } from './setting.ts';
import type { StageFacts } from './stage-facts.ts';

/** Sawing the arch of a top rail about the trammel's pivot. */
export const arch = {
  title: 'stage.arch',
  station: 'band-saw',
  of: 'part',
  settings: {
    chord: FOLLOWING_LENGTH,
    rise: FOLLOWING_LENGTH,
    radius: { is: 'length', pared: 'arch', rounds: 'down' },
    pivot: LENGTH,
    springing: LENGTH,
    centre: LENGTH,
    arcLength: FOLLOWING_REAL,
  },
  cautions: ARCH,
  steps: { usual: ['how.arch'] },
  arches: true,
} as const satisfies StageFacts;

/** Sanding the sawn arch to its radius. */
export const smooth = {
  title: 'stage.smooth',
  station: 'spindle-sander',
  of: 'part',
  settings: { radius: LENGTH, drum: MAYBE_TOOL },
  cautions: SMOOTH,
  steps: { usual: ['how.smooth'] },
} as const satisfies StageFacts;
