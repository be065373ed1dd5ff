import type { Units } from '../length/units.ts';
import type { PlanPart, PlanStage, Settings, SettingValue } from '../plan/plan.ts';
import { widestBlade } from '../plan/widest-blade.ts';
import { AT_STATIONS } from '../stages/cautions/at-stations.ts';
import type { Caution, CautionFigure, CautionKey, SourceId } from '../stages/cautions/caution.ts';
import { kindOf } from '../stages/stage-id.ts';
import type { StationId } from '../stages/stations.ts';
import { factsOf } from '../stages/table.ts';
import { say } from '../words/say.ts';

/** A caution as it is told: its words, the figures in them, and where it is from. */
export interface ToldCaution {
  readonly key: CautionKey;
  readonly figures: Readonly<Partial<Record<CautionFigure, string>>>;
  readonly from: readonly SourceId[];
}

/** Of what cautions are told, and how a length in them is read. */
export interface Cautioned {
  /** The part that is worked; none where the door as a whole is. */
  readonly part?: Pick<PlanPart, 'stages'>;
  /** The job's units, and how one of its lengths is read, with its unit. Without it no caution is told that names a figure. */
  readonly lengths?: { readonly units: Units; readonly read: (value: SettingValue) => string };
}

/**
 * What can hurt at a stage, the gravest first: the cautions of its kind that hold at the station where it is done and for
 * this very part, an arched one's own before those of all. Where none holds, because the shop does it at a station that they
 * do not know, those of that station. There is always one.
 */
export function cautionsOf(stage: PlanStage, cautioned: Cautioned = {}): [ToldCaution, ...ToldCaution[]] {
  const kind = kindOf(stage.stage);
  if (kind === null) return atStation(stage.station);
  const { cautions, station } = factsOf(kind);
  const shape = isArched(cautioned.part) ? 'arched' : 'straight';
  const figures = figuresOf(stage, cautioned);
  const [first, ...rest] = cautions
    .filter(({ at = station, of = shape }) => at === stage.station && of === shape)
    .filter(({ needs }) => needs === undefined || figures[needs] !== undefined)
    .map((caution) => told(caution, figures));
  return first === undefined ? atStation(stage.station) : [first, ...rest];
}

/** The caution that matters most at a stage of this part: the one that is always in sight. */
export function gravestOf(stage: PlanStage, cautioned: Cautioned = {}): ToldCaution {
  return cautionsOf(stage, cautioned)[0];
}

/** What can hurt at a station whatever is done there, the gravest first. */
export function atStation(station: StationId): [ToldCaution, ...ToldCaution[]] {
  const [first, ...rest] = AT_STATIONS[station];
  return [told(first, {}), ...rest.map((caution) => told(caution, {}))];
}

/** A caution in words. */
export function cautionText({ key, figures }: ToldCaution): string {
  return say(key, { ...figures });
}

function told({ key, from }: Caution, figures: ToldCaution['figures']): ToldCaution {
  return { key, figures, from };
}

/** Has this part an arch: a rail's sight edge, or a panel's top? */
function isArched(part: Cautioned['part']): boolean {
  return part?.stages.some(({ stage }) => stage === 'arch' || stage === 'cutout') === true;
}

/** The figures that cautions name, as they are read; those that this stage does not give are left out. */
function figuresOf({ settings }: PlanStage, { lengths }: Cautioned): ToldCaution['figures'] {
  if (lengths === undefined) return {};
  const { units, read } = lengths;
  const { bladeHeight, radius }: Settings & Partial<Record<'bladeHeight' | 'radius', SettingValue>> =
    settings;
  const blade = typeof radius === 'string' ? widestBlade(radius, units) : null;
  return {
    ...(bladeHeight === undefined ? {} : { bladeHeight: read(bladeHeight) }),
    ...(blade === null ? {} : { widestBlade: read(blade) }),
  };
}
