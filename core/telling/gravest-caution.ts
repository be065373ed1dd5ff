import type { CautionKey } from '../stages/stage-facts.ts';
import { kindOf } from '../stages/stage-id.ts';
import type { StationId } from '../stages/stations.ts';
import { factsOf } from '../stages/table.ts';

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

/** The key of the gravest caution for a stage at a station: its own where it has one and is done there, else the station's. */
export function gravestCaution(station: StationId, stage: string): CautionKey {
  const kind = kindOf(stage);
  const own = kind === null ? undefined : factsOf(kind).gravest;
  return own?.startsWith(`caution.${station}.`) === true ? own : AT_STATION[station];
}
