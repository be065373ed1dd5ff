/** Numerals grow at most to so many times their least size. */
const MOST = 3;
/** Their names grow more slowly, and no further than this; they never get smaller than can be read. */
const MOST_OF_NAMES = 1.6;
const LEAST_OF_NAMES = 0.9;
/** Steps from one size to the next larger. */
const STEPS = 20;
/** A target is never smaller, nor a row of them lower. */
const TARGET = 64;
/** Between two cells beside each other, and between two rows, at the least size. */
const GAP = 18;
const ROW_GAP = 2;

/** Width and height as it stands at its least size. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** A setting as it stands at its least size: its name over its number, and perhaps a line under that. */
export interface Cell {
  readonly name: Extent;
  readonly number: Extent;
  readonly line?: Extent;
}

/** How many times its least size a name stands at when its number stands at so many. */
export function namesAt(times: number): number {
  return Math.max(LEAST_OF_NAMES, Math.min(MOST_OF_NAMES, 0.4 + 0.6 * times));
}

/** How many times larger cells can stand in a room, wrapped into rows as they come; 1 where they cannot be larger. */
export function growWrapped(cells: readonly Cell[], room: Extent): number {
  for (let k = MOST * STEPS; k > STEPS; k -= 1) if (fits(cells, room, k / STEPS)) return k / STEPS;
  return 1;
}

function fits(cells: readonly Cell[], room: Extent, times: number): boolean {
  const names = namesAt(times);
  const gap = GAP * times;
  let [wide, high, above] = [0, 0, 0];
  for (const { name, number, line = { width: 0, height: 0 } } of cells) {
    const width = Math.max(TARGET, name.width * names, number.width * times, line.width * names);
    const height = name.height * names + Math.max(TARGET, number.height * times) + line.height * names;
    if (width > room.width) return false;
    if (wide > 0 && wide + gap + width > room.width) {
      above += high + ROW_GAP;
      [wide, high] = [0, 0];
    }
    wide += (wide > 0 ? gap : 0) + width;
    high = Math.max(high, height);
  }
  return above + high <= room.height;
}
