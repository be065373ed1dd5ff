import { screenMemory } from '../screen-memory.ts';

/** A bank card in millimetres: the size ID-1 of ISO/IEC 7810, with corners of 3.18 mm (the radius from memory). */
export const CARD = { long: 85.6, short: 53.98, corner: 3.18 } as const;
/** CSS pixels to a millimetre, from a wall-sized television to the finest telephone. */
export const SCALES = { least: 0.9, most: 12 } as const;

const KEPT = 'shoulderline.mm-per-dot';

/**
 * CSS pixels to a millimetre of this screen as it was measured with a card; null where it was not. What is kept is the size of
 * one dot of the glass, which stays when the screen is turned or its pages are made larger.
 */
export function cardScale(): number | null {
  const scale = 1 / (Number(screenMemory.getItem(KEPT)) * dotsPerPixel());
  return scale >= SCALES.least / 4 && scale <= SCALES.most * 4 ? scale : null;
}

/** Keeps for this screen alone that so many CSS pixels of the page are a millimetre. */
export function keepCardScale(scale: number): void {
  // Fingers may have made the page larger: then the card was held against larger pixels.
  const zoomed = globalThis.visualViewport?.scale ?? 1;
  screenMemory.setItem(KEPT, String(1 / (scale * zoomed * dotsPerPixel())));
}

/** The width was said in another way: the card counts no more. */
export function forgetCardScale(): void {
  if (screenMemory.getItem(KEPT) !== null) screenMemory.setItem(KEPT, '');
}

function dotsPerPixel(): number {
  return devicePixelRatio > 0 ? devicePixelRatio : 1;
}
