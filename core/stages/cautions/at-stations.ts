import type { StationId } from '../stations.ts';
import type { Cautions } from './caution.ts';

/** What can hurt at each station whatever is done there, the gravest first. */
export const AT_STATIONS: Readonly<Record<StationId, Cautions>> = {
  milling: [
    { key: 'caution.milling.1', from: ['common-practice'] },
    { key: 'caution.milling.2', from: ['common-practice'] },
    { key: 'caution.milling.3', from: ['common-practice'] },
  ],
  'band-saw': [
    { key: 'caution.band-saw.1', from: ['osha-etool', 'osha-1910-213'] },
    { key: 'caution.band-saw.2', from: ['osha-etool', 'hse-wis-31'] },
    { key: 'caution.band-saw.3', from: ['common-practice'] },
  ],
  'spindle-sander': [
    { key: 'caution.spindle-sander.1', from: ['common-practice'] },
    { key: 'caution.spindle-sander.2', from: ['common-practice'] },
    { key: 'caution.spindle-sander.3', from: ['hse-wis-23'] },
  ],
  'router-table': [
    { key: 'caution.router-table.1', from: ['osha-3157', 'common-practice'] },
    { key: 'caution.router-table.2', from: ['common-practice'] },
    { key: 'caution.router-table.3', from: ['common-practice'] },
  ],
  'table-saw': [
    { key: 'caution.table-saw.1', from: ['osha-1910-213', 'hse-wis-16'] },
    { key: 'caution.table-saw.2', from: ['common-practice'] },
    { key: 'caution.table-saw.3', from: ['osha-1910-213', 'hse-wis-16'] },
  ],
  mortiser: [
    { key: 'caution.mortiser.3', from: ['common-practice'] },
    { key: 'caution.mortiser.1', from: ['common-practice'] },
    { key: 'caution.mortiser.2', from: ['common-practice'] },
  ],
  bench: [
    { key: 'caution.bench.1', from: ['common-practice'] },
    { key: 'caution.bench.2', from: ['common-practice'] },
    { key: 'caution.bench.3', from: ['common-practice'] },
  ],
  assembly: [
    { key: 'caution.assembly.3', from: ['common-practice'] },
    { key: 'caution.assembly.1', from: ['common-practice'] },
    { key: 'caution.assembly.2', from: ['common-practice'] },
  ],
  fitting: [
    { key: 'caution.fitting.1', from: ['common-practice'] },
    { key: 'caution.fitting.2', from: ['common-practice'] },
    { key: 'caution.fitting.3', from: ['common-practice'] },
  ],
};
