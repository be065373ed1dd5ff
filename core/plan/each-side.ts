/** The four sides of a door or an opening, as seen from the front. */
export const SIDES = ['left', 'right', 'bottom', 'top'] as const;
export type Side = (typeof SIDES)[number];

/** One of something for each side. */
export type EachSide<T> = Readonly<Record<Side, T>>;

/** Each side's own, made by its name. */
export function eachSide<T>(of: (side: Side) => T): EachSide<T> {
  return { left: of('left'), right: of('right'), bottom: of('bottom'), top: of('top') };
}
