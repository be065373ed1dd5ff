import { screenMemory } from './screen-memory.ts';

/** How wide the screen is when nobody has said: a 24-inch one. */
export const USUAL_WIDTH_MM = 531;
const REMEMBERED = 'shoulderline.screen-width-mm';
/** A numeral's height as a share of the face's size. */
const NUMERAL_SHARE = 0.668;
/** Read from two metres: 20 to 22 minutes of arc (ISO 9241-303, from memory) are 12 to 13 mm. */
const NUMERAL_MM = 13;
const LEAST_PX = 48;

let shopWidth: number | undefined;

/** The width that the shop gives for the station at this screen; it counts before the one set here. */
export function setShopWidthMm(width: number | undefined): void {
  shopWidth = width;
  sizeNumerals();
}

/** The width that was set for this screen, in millimetres. */
export function screenWidthMm(): number {
  if (shopWidth !== undefined) return shopWidth;
  const kept = Number(screenMemory.getItem(REMEMBERED));
  return kept >= 50 && kept <= 5000 ? kept : USUAL_WIDTH_MM;
}

export function setScreenWidthMm(width: number): void {
  screenMemory.setItem(REMEMBERED, String(width));
  sizeNumerals();
}

/** The type size, in CSS pixels, whose numerals stand 13 mm high on a screen of this width. */
export function numeralSize(pixels: number, millimetres: number): number {
  return Math.max(LEAST_PX, Math.ceil((NUMERAL_MM / NUMERAL_SHARE) * (pixels / millimetres)));
}

/** Sets the size of the settings made now from the screen's width. */
export function sizeNumerals(): void {
  document.documentElement.style.setProperty(
    '--numeral',
    `${numeralSize(screen.width > 0 ? Math.min(screen.width, innerWidth) : innerWidth, screenWidthMm())}px`,
  );
}
