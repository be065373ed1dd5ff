import { screenMemory } from '../screen-memory.ts';

/** The first free label on a sheet after so many were printed from a position on it; 1 when the last sheet came out full. */
export function nextPosition(from: number, count: number, positions: number): number {
  return ((((from - 1) % positions) + count) % positions) + 1;
}

const REMEMBERED = 'shoulderline.first-label.';

/** The first free label of this stock as it was left here. */
export function rememberedPosition(stock: string): string {
  return screenMemory.getItem(REMEMBERED + stock) ?? '1';
}

/** Keeps where the sheet in the printer goes on. */
export function rememberPosition(stock: string, position: number): void {
  screenMemory.setItem(REMEMBERED + stock, String(position));
}
