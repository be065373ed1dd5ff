import type { Length } from '../length/length.ts';
import type { Real } from '../length/real.ts';
import type { PartName } from '../plan/part-name.ts';
import type { PlaceName } from '../plan/place-name.ts';
import type { SettingFacts } from '../stages/setting.ts';
import type { StageId } from '../stages/stage-id.ts';
import type { StationId } from '../stages/stations.ts';
import {
  factsOf,
  type PlacedKind,
  type PlaceTable,
  type SettingTableOf,
  type StageKind,
} from '../stages/table.ts';
import type { BoundKey } from '../words/allow.ts';
import type { WhyKey } from '../words/why.ts';

/** An exact length before it is printed. */
interface Exact {
  readonly kind: 'exact';
  readonly value: Length;
}
/** A figure that has left the fractions, before it is printed. */
interface Irrational {
  readonly kind: 'real';
  readonly value: Real;
}
/** A count, an angle in degrees, or a word. */
interface Plain<T extends number | string> {
  readonly kind: 'plain';
  readonly value: T;
}
/** A value before it is printed. */
export type Value = Exact | Irrational | Plain<number | string>;

/** What a setting is measured from, as the key of its words. */
export type DatumKey = Extract<WhyKey, `from.${string}`>;

/** By how much a setting may be off, all others exact: how far under and over, never below zero, and what bounds each. */
export interface Allow {
  readonly less: Length;
  readonly more: Length;
  readonly lessBy: BoundKey;
  readonly moreBy: BoundKey;
}

/** One setting with what explains it: where it is measured from, and the sum in words with these figures. */
export interface Entry<V extends Value = Value> {
  readonly value: V;
  readonly from: DatumKey;
  readonly reason: WhyKey;
  readonly figures: Readonly<Record<string, Length | Real | number | string>>;
  /** Only of a length for which it is known, and only where somebody asks: `allowed` puts it there. */
  readonly allow?: Allow;
}

type EntryOf<F extends SettingFacts> = F['is'] extends 'length'
  ? Entry<Exact>
  : F['is'] extends 'real'
    ? Entry<Irrational>
    : F['is'] extends 'count' | 'angle'
      ? Entry<Plain<number>>
      : F['is'] extends readonly string[]
        ? Entry<Plain<F['is'][number]>>
        : never;

/** All settings of a table, none left out; undefined where such a stage may lack it and does. */
type EntriesOf<T extends Readonly<Record<string, SettingFacts>>> = {
  readonly [N in keyof T]: T[N] extends { readonly maybe: true } ? EntryOf<T[N]> | undefined : EntryOf<T[N]>;
};

/** One place of a stage before it is printed: a mortise, a strip. */
export interface PlaceDraft<K extends PlacedKind> {
  readonly at: PlaceName;
  readonly entries: EntriesOf<PlaceTable<K>>;
}

/** A stage of a kind before it is printed. */
export type DraftOf<K extends StageKind> = {
  readonly kind: K;
  readonly stage: StageId<K>;
  readonly station: StationId;
  readonly entries: EntriesOf<SettingTableOf<K>>;
  readonly after: readonly StageId[];
} & (K extends PlacedKind ? { readonly places: readonly PlaceDraft<K>[] } : { readonly places?: never });

/** A stage of whatever kind before it is printed. */
export type StageDraft = { [K in StageKind]: DraftOf<K> }[StageKind];

/** A part before it is printed: its size as milled, exact, in the job’s units, and its stages in their order. */
export interface PartDraft {
  readonly part: PartName;
  readonly length: Length;
  readonly width: Length;
  readonly thickness: Length;
  readonly stages: readonly StageDraft[];
}

type Figures = Entry['figures'];

/** The station at which a kind of stage is done where the shop says nothing else. */
export function usualStation(kind: StageKind): StationId {
  return factsOf(kind).station;
}

/** A setting that is an exact length. */
export function exact(value: Length, from: DatumKey, reason: WhyKey, figures: Figures = {}): Entry<Exact> {
  return { value: { kind: 'exact', value }, from, reason, figures };
}

/** A setting that has left the fractions. */
export function irrational(
  value: Real,
  from: DatumKey,
  reason: WhyKey,
  figures: Figures = {},
): Entry<Irrational> {
  return { value: { kind: 'real', value }, from, reason, figures };
}

/** A setting that is a count, an angle in degrees, or a word. */
export function plain<T extends number | string>(
  value: T,
  from: DatumKey,
  reason: WhyKey,
  figures: Figures = {},
): Entry<Plain<T>> {
  return { value: { kind: 'plain', value }, from, reason, figures };
}
