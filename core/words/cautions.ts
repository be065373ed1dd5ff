import { bandSawCautions } from './cautions/band-saw.ts';
import { benchCautions } from './cautions/bench.ts';
import { cautionSources } from './cautions/sources.ts';
import { doorCautions } from './cautions/door.ts';
import { millingCautions } from './cautions/milling.ts';
import { mortiserCautions } from './cautions/mortiser.ts';
import { routerTableCautions } from './cautions/router-table.ts';
import { stationCautionWords } from './cautions/stations.ts';
import { tableSawCautions } from './cautions/table-saw.ts';

/**
 * What can hurt: at each stage at its machine, and at a machine whatever is done there. Each caution's source stands beside
 * its key in core/stages/cautions.
 */
export const cautionWords = {
  'caution.first': 'The machine’s manual, local codes and proper training come first.',
  'caution.short': 'Under {least} long: never hand-feed it; use a carrier.',
  ...stationCautionWords,
  ...millingCautions,
  ...bandSawCautions,
  ...routerTableCautions,
  ...tableSawCautions,
  ...mortiserCautions,
  ...benchCautions,
  ...doorCautions,
  ...cautionSources,
} as const;
