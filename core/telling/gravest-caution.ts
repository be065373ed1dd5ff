import type { StationId } from '../plan/names.ts';
import type { cautionWords } from '../words/cautions.ts';

type CautionKey = keyof typeof cautionWords;

/** The danger that matters most at each station: the one that a setup shows, all others standing a tap away. */
const AT_STATION: Readonly<Record<StationId, CautionKey>> = {
  milling: 'caution.milling.3',
  'band-saw': 'caution.band-saw.2',
  'spindle-sander': 'caution.spindle-sander.1',
  'router-table': 'caution.router-table.1',
  'table-saw': 'caution.table-saw.1',
  mortiser: 'caution.mortiser.3',
  bench: 'caution.bench.1',
  assembly: 'caution.assembly.3',
  fitting: 'caution.fitting.1',
};

/** Work at the station that has a greater danger of its own, by the kind of stage. */
const AT_STAGE: Readonly<Record<string, CautionKey>> = {
  raise: 'caution.router-table.3',
  strip: 'caution.table-saw.2',
  mitre: 'caution.table-saw.3',
};

/** The key of the gravest caution for a stage at a station. */
export function gravestCaution(station: StationId, stage: string): CautionKey {
  const own = AT_STAGE[stage.split('-')[0] ?? stage];
  return own?.startsWith(`caution.${station}.`) === true ? own : AT_STATION[station];
}
