import { cardScale, forgetCardScale } from './device/card-scale.ts';
import { screenMemory } from './screen-memory.ts';

/** How wide the screen is when nobody has said: a 24-inch one. */
export const USUAL_WIDTH_MM = 531;
/** A screen whose shorter side has fewer CSS pixels is taken for a telephone's until it is measured: about 0.16 mm a pixel (from memory). */
const SMALL_PX = 600;
const SMALL_SCALE = 1 / 0.16;
const REMEMBERED = 'shoulderline.screen-width-mm';
/** A numeral's height as a share of the face's size. */
const NUMERAL_SHARE = 0.668;
/** Read from two metres: 20 to 22 minutes of arc (ISO 9241-303, from memory) are 12 to 13 mm. */
const NUMERAL_MM = 13;
/** A screen this high is read from two metres; a smaller one from ten times its shorter side, as it is nearer to the eyes. */
const FAR_SIDE_MM = 200;
/** In the hand, at arm's length: 22 minutes of arc at 700 mm. */
const HAND_NUMERAL_MM = 4.5;
/** No smaller than this, so that the settings stay the largest type on the screen. */
const LEAST_PX = 48;
/**
 * Where a set-up stands whole in its window, numerals measured by a card take no more than this share of the window's width, so
 * that one of many numbers fits; a smaller window is laid out to be scrolled, and has a limit of its own.
 */
const WHOLE = { width: 1024, height: 640, share: 1 / 26 } as const;

let shopWidth: number | undefined;

/** The width that the shop gives for the station at this screen; it counts before the one typed here, and after a card held to this screen. */
export function setShopWidthMm(width: number | undefined): void {
  shopWidth = width;
  sizeNumerals();
}

/** The width of this screen in millimetres, as far as it is known. */
export function screenWidthMm(): number {
  return Math.round(pixelsAcross() / pixelsPerMm());
}

/** Takes a width as measured with a rule; a card held to the screen before counts no more. */
export function setScreenWidthMm(width: number): void {
  screenMemory.setItem(REMEMBERED, String(width));
  forgetCardScale();
  sizeNumerals();
}

/** CSS pixels to a millimetre: by the card, else by the width told by the shop or typed here, else by the usual. */
export function pixelsPerMm(): number {
  const card = cardScale();
  if (card !== null) return card;
  const kept = Number(screenMemory.getItem(REMEMBERED));
  const typed = kept >= 50 && kept <= 5000 ? kept : undefined;
  // What the shop says of a station is of the screen that stands there, not of a telephone that is held before it.
  if (isSmall() && typed === undefined) return SMALL_SCALE;
  return pixelsAcross() / ((isSmall() ? typed : (shopWidth ?? typed)) ?? USUAL_WIDTH_MM);
}

/** How high numerals are to stand, in millimetres, on a screen whose shorter side is so long. */
export function numeralMm(shorterSide: number): number {
  return Math.max(HAND_NUMERAL_MM, NUMERAL_MM * Math.min(1, shorterSide / FAR_SIDE_MM));
}

/** The type size, in CSS pixels, whose numerals stand so many millimetres high on a screen of this width. */
export function numeralSize(pixels: number, millimetres: number, high = NUMERAL_MM): number {
  return Math.max(LEAST_PX, Math.ceil((high / NUMERAL_SHARE) * (pixels / millimetres)));
}

/** Sets the size of the settings made now from what is known of the screen. */
export function sizeNumerals(): void {
  const scale = pixelsPerMm();
  const size = numeralSize(scale, 1, numeralMm(shorterSide() / scale));
  const whole = innerWidth >= WHOLE.width && innerHeight >= WHOLE.height;
  const most = whole && cardScale() !== null ? innerWidth * WHOLE.share : Infinity;
  document.documentElement.style.setProperty(
    '--numeral',
    `${Math.max(LEAST_PX, Math.min(size, Math.floor(most)))}px`,
  );
}

function isSmall(): boolean {
  return screen.width > 0 && shorterSide() < SMALL_PX;
}

function pixelsAcross(): number {
  return screen.width > 0 ? Math.min(screen.width, innerWidth) : innerWidth;
}

function shorterSide(): number {
  return Math.min(screen.width, screen.height);
}
