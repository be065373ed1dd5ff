/** Which stickers are chosen, and from where the next tap makes a range. */
export interface Choice {
  readonly codes: readonly string[];
  /** The codes of the tap that began the range; null when the next tap begins one. */
  readonly began: readonly string[] | null;
}

/** Nothing chosen: everything is meant. */
export const NOTHING_CHOSEN: Choice = { codes: [], began: null };

/**
 * What is chosen after a tap on a sticker, or on a door with all of its stickers. The first tap takes it alone, the second takes
 * all from the first to it in the order of the sheet, whichever comes first; the next begins anew. A tap on what alone is chosen lets it go.
 */
export function tapped(order: readonly string[], { codes, began }: Choice, tap: readonly string[]): Choice {
  if (codes.length === tap.length && tap.every((code) => codes.includes(code))) return NOTHING_CHOSEN;
  if (began === null) return { codes: tap, began: tap };
  const places = [...began, ...tap].map((code) => order.indexOf(code)).filter((place) => place >= 0);
  return { codes: order.slice(Math.min(...places), Math.max(...places) + 1), began: null };
}

/** What is chosen after a tap where each is taken or let go by itself; a door by all of its stickers. */
export function toggled(chosen: readonly string[], tap: readonly string[]): Choice {
  const rest = chosen.filter((code) => !tap.includes(code));
  const all = tap.every((code) => chosen.includes(code));
  return { codes: all ? rest : [...rest, ...tap], began: null };
}
