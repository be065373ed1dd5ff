/** The name of a place on a stile as printed in plans, for ever: an end, or where a mid rail meets it. */
export type PlaceName = 'bottom' | 'top' | `mid-${number}`;

/** A place's name, read. */
export type ReadPlace = { readonly at: 'bottom' | 'top' } | { readonly at: 'mid'; readonly k: number };

/** Reads what may be a place's name; null when it is none. */
export function parsePlace(name: string): ReadPlace | null {
  if (name === 'bottom' || name === 'top') return { at: name };
  const k = /^mid-([1-9]\d*)$/.exec(name)?.[1];
  return k === undefined ? null : { at: 'mid', k: Number(k) };
}

/** Is this text a place's name? */
export function isPlaceName(text: string): text is PlaceName {
  return parsePlace(text) !== null;
}

/**
 * The end of the stile from which the settings of a place are measured: those of the place `top` from the top end, all
 * others, a mid rail's too, from the bottom end.
 */
export function placeEnd(at: PlaceName): 'top' | 'bottom' {
  return at === 'top' ? 'top' : 'bottom';
}
