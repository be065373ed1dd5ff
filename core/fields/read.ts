import type { Length } from '../length/length.ts';
import type { Species } from '../movement/species.ts';
import type { EachSide } from '../plan/each-side.ts';
import type { Fields, Shape } from './shape.ts';

/** What is read where a field of this shape stands: exact lengths, words, and groups of what was given. */
export type Read<S extends Shape> = Shape extends S
  ? unknown
  : S extends { readonly kind: 'group'; readonly fields: infer F extends Fields }
    ? (S extends { readonly whole: true } ? Required<ReadFields<F>> : ReadFields<F>) | NullOf<S>
    : S extends { readonly kind: 'list'; readonly of: infer E extends Shape }
      ? readonly Read<E>[]
      : S extends { readonly kind: 'sides' }
        ? Partial<EachSide<Length>>
        : Plain<S>;

/** What is read of fields, each of which a file may leave out. */
export type ReadFields<F extends Fields> = { readonly [K in keyof F]?: Read<F[K]> };

/** The same once nothing is open: only a field that is `optional` may still be left out. */
export type Settled<S extends Shape> = S extends {
  readonly kind: 'group';
  readonly fields: infer F extends Fields;
}
  ? SettledFields<F> | NullOf<S>
  : S extends { readonly kind: 'list'; readonly of: infer E extends Shape }
    ? readonly Settled<E>[]
    : S extends { readonly kind: 'sides' }
      ? EachSide<Length>
      : Plain<S>;

/** Fields of which none is open. */
export type SettledFields<F extends Fields> = {
  readonly [K in keyof F as F[K] extends Optional ? never : K]: Settled<F[K]>;
} & { readonly [K in keyof F as F[K] extends Optional ? K : never]?: Settled<F[K]> };

interface Optional {
  readonly optional: true;
}
type NullOf<S extends Shape> = S extends { readonly orNull: true } ? null : never;
type Plain<S extends Shape> = S extends { readonly kind: 'word'; readonly of: readonly (infer W)[] }
  ? W
  : S extends { readonly kind: 'species' }
    ? Species
    : Length;
