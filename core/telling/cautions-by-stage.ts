import { AT_STATIONS } from '../stages/cautions/at-stations.ts';
import type { Caution, SourceId } from '../stages/cautions/caution.ts';
import { type StationId, STATIONS } from '../stages/stations.ts';
import { factsOf, STAGE_KINDS, type StageKind } from '../stages/table.ts';
import { say } from '../words/say.ts';

/** What can hurt at one station: in each kind of stage that is done there, and whatever is done. */
export interface CautionsAtStation {
  readonly station: StationId;
  readonly stages: readonly { readonly kind: StageKind; readonly cautions: readonly Caution[] }[];
  readonly always: readonly Caution[];
}

/** Every caution there is, station by station, stage by stage, the gravest first. */
export const CAUTIONS_BY_STAGE: readonly CautionsAtStation[] = STATIONS.map((station) => ({
  station,
  stages: STAGE_KINDS.map((kind) => {
    const { cautions, station: usual } = factsOf(kind);
    return { kind, cautions: cautions.filter(({ at = usual }) => at === station) };
  }).filter(({ cautions }) => cautions.length > 0),
  always: AT_STATIONS[station],
}));

/** Every source that a caution is from, in the order in which they first stand there: they are numbered by it. */
export const SOURCES: readonly SourceId[] = [
  ...new Set(
    CAUTIONS_BY_STAGE.flatMap(({ stages, always }) =>
      [...stages.flatMap(({ cautions }) => cautions), ...always].flatMap(({ from }) => from),
    ),
  ),
];

const OPEN = '…';

/** A kind of stage by its titles: those of a stile's mitres and notches one after another. */
export function kindTitle(kind: StageKind): string {
  const { title } = factsOf(kind);
  return (typeof title === 'string' ? [title] : title).map((key) => say(key, { k: OPEN })).join(' · ');
}

/** A caution in words, of no part: its figures are left open. */
export function cautionInGeneral({ key }: Caution): string {
  return say(key, { bladeHeight: OPEN, widestBlade: OPEN });
}
