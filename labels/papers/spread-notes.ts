/** A line of words that belongs at a height; several of them must not stand on one another. */
export interface Standing<T> {
  readonly wished: number;
  readonly note: T;
}

/**
 * Heights for notes, from the top down, each as near to where it belongs as its neighbours allow: no two nearer than
 * the pitch, all between the least and the greatest height. Null where so many have no room.
 */
export function spreadNotes<T>(
  notes: readonly Standing<T>[],
  least: number,
  greatest: number,
  pitch: number,
): { readonly note: T; readonly wished: number; readonly height: number }[] | null {
  if ((notes.length - 1) * pitch > greatest - least) return null;
  const sorted = notes.toSorted((a, b) => b.wished - a.wished);
  const heights = sorted.map(({ wished }) => Math.max(least, Math.min(greatest, wished)));
  for (let k = 1; k < heights.length; k += 1)
    heights[k] = Math.min(heights[k] ?? 0, (heights[k - 1] ?? 0) - pitch);
  let floor = least;
  for (let k = heights.length - 1; k >= 0; k -= 1) {
    heights[k] = Math.max(heights[k] ?? 0, floor);
    floor = (heights[k] ?? 0) + pitch;
  }
  return sorted.map(({ wished, note }, k) => ({ note, wished, height: heights[k] ?? wished }));
}
