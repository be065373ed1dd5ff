import type { z } from 'zod';

/** A type in which nothing can be changed, however deep. */
export type Frozen<T> = T extends readonly (infer E)[]
  ? readonly Frozen<E>[]
  : T extends object
    ? { readonly [K in keyof T]: Frozen<T[K]> }
    : T;

/** What a field that may be left out holds then. */
interface LeftOut {
  readonly leftOut: true;
}

/** A frozen type with every field there: one that may be left out is another one than one that may not. */
type Whole<T> = T extends readonly (infer E)[]
  ? readonly Whole<E>[]
  : T extends object
    ? { readonly [K in keyof T]-?: Whole<T[K]> | (object extends Pick<T, K> ? LeftOut : never) }
    : T;

type Same<A, B> = [Whole<A>, Whole<B>] extends [Whole<B>, Whole<A>] ? true : false;

/**
 * Holds a schema to core's own type for what it describes, and gives it back as it is. What the one has and the other has
 * not, or only at times, does not compile; `exactOptional` is a field that is left out, `optional` one that may also be
 * undefined.
 */
export function heldTo<Meaning>() {
  return <S extends z.ZodType>(
    schema: S &
      (Same<z.infer<S>, Meaning> extends true ? unknown : { readonly isNotWhatItDescribes: Meaning }),
  ): S => schema;
}
