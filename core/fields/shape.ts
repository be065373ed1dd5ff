/** What a field of a file may hold. Lengths are at least 0 unless `signed`. */
export type Shape =
  | { readonly kind: 'length'; readonly signed?: true; readonly positive?: true }
  | { readonly kind: 'word'; readonly of: readonly string[] }
  | { readonly kind: 'species' }
  | {
      readonly kind: 'group';
      readonly fields: Readonly<Record<string, Shape>>;
      readonly whole?: true;
      readonly orNull?: true;
    }
  | { readonly kind: 'list'; readonly of: Shape; readonly most: number };
