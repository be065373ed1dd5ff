/** What a field of a file may hold. Lengths are at least 0 unless `signed`. */
export type Shape = OfKind & {
  /** It may stay open: nothing stands for it where a file leaves it out. */
  readonly optional?: true;
};

type OfKind =
  | { readonly kind: 'length'; readonly signed?: true; readonly positive?: true }
  /** A length for all four sides, or a group with one for each: read as what it says of each side. */
  | { readonly kind: 'sides' }
  | { readonly kind: 'word'; readonly of: readonly string[] }
  | { readonly kind: 'species' }
  | {
      readonly kind: 'group';
      readonly fields: Fields;
      readonly whole?: true;
      readonly orNull?: true;
    }
  | { readonly kind: 'list'; readonly of: Shape; readonly most: number };

/** Fields by name. */
export type Fields = Readonly<Record<string, Shape>>;
