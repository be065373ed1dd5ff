import type { Length } from '../length/length.ts';
import type { Real } from '../length/real.ts';
import type { WhyKey } from '../words/why.ts';
import type { StationId } from '../plan/names.ts';

/** A value before it is printed: exact, or one that has left the fractions, or a count, or a word. */
export type Value =
  | { readonly kind: 'exact'; readonly value: Length }
  | { readonly kind: 'real'; readonly value: Real }
  | { readonly kind: 'plain'; readonly value: number | string };

/** One setting with what explains it: where it is measured from, and the sum in words with these figures. */
export interface Entry {
  readonly name: string;
  readonly value: Value;
  readonly from: DatumKey;
  readonly reason: WhyKey;
  readonly figures: Readonly<Record<string, Length | Real | number | string>>;
}

/** What a setting is measured from, as the key of its words. */
export type DatumKey = Extract<WhyKey, `from.${string}`>;

/** One place of a stage before it is printed: a mortise, a strip. */
export interface PlaceDraft {
  readonly at: string;
  readonly entries: readonly Entry[];
}

/** A stage before it is printed. */
export interface StageDraft {
  readonly stage: string;
  readonly station: StationId;
  readonly entries: readonly Entry[];
  readonly places?: readonly PlaceDraft[];
  readonly after: readonly string[];
}

/** A part before it is printed: its size as milled, exact, in the job’s units, and its stages in their order. */
export interface PartDraft {
  readonly part: string;
  readonly length: Length;
  readonly width: Length;
  readonly thickness: Length;
  readonly stages: readonly StageDraft[];
}

type Figures = Entry['figures'];

/** A setting that is an exact length. */
export function exact(
  name: string,
  value: Length,
  from: DatumKey,
  reason: WhyKey,
  figures: Figures = {},
): Entry {
  return { name, value: { kind: 'exact', value }, from, reason, figures };
}

/** A setting that has left the fractions. */
export function irrational(
  name: string,
  value: Real,
  from: DatumKey,
  reason: WhyKey,
  figures: Figures = {},
): Entry {
  return { name, value: { kind: 'real', value }, from, reason, figures };
}

/** A setting that is a count, an angle in degrees, or a word. */
export function plain(
  name: string,
  value: number | string,
  from: DatumKey,
  reason: WhyKey,
  figures: Figures = {},
): Entry {
  return { name, value: { kind: 'plain', value }, from, reason, figures };
}
