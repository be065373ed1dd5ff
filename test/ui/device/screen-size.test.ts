// @vitest-environment node

import { afterEach, expect, test, vi } from 'vitest';
import { keepCardScale } from '#ui/device/card-scale.ts';
import { numeralMm, pixelsPerMm, screenWidthMm, setScreenWidthMm, setShopWidthMm } from '#ui/screen-size.ts';

let numeral = '';
/** The page on a screen of so many CSS pixels, each of so many dots. */
function screenOf(width: number, height: number, dots = 1): void {
  vi.stubGlobal('screen', { width, height });
  vi.stubGlobal('innerWidth', width);
  vi.stubGlobal('innerHeight', height);
  vi.stubGlobal('devicePixelRatio', dots);
  vi.stubGlobal('document', {
    documentElement: { style: { setProperty: (_name: string, value: string) => (numeral = value) } },
  });
}
const kept = new Map<string, string>();
vi.stubGlobal('localStorage', {
  getItem: (name: string) => kept.get(name) ?? null,
  setItem: (name: string, value: string) => void kept.set(name, value),
});
afterEach(() => {
  kept.clear();
  setShopWidthMm(undefined);
});

test('a wall screen keeps its numerals: 24 inches when nobody has said, else the width that was', () => {
  screenOf(1920, 1080);
  setShopWidthMm(undefined);
  expect([numeral, screenWidthMm()]).toEqual(['71px', 531]);
  setShopWidthMm(700);
  expect([numeral, screenWidthMm()]).toEqual(['54px', 700]);
  setScreenWidthMm(400);
  expect(screenWidthMm()).toBe(700);
  setShopWidthMm(undefined);
  expect(screenWidthMm()).toBe(400);
});

test('a telephone is not taken for the screen that stands at its station', () => {
  screenOf(360, 640, 3);
  setShopWidthMm(531);
  expect(pixelsPerMm()).toBeCloseTo(6.25);
  expect(screenWidthMm()).toBe(58);
  expect(numeral).toBe('48px');
});

test('the card counts before what the shop says, also after the device was turned and its pages were made larger', () => {
  screenOf(800, 1280, 2);
  setShopWidthMm(531);
  keepCardScale(5.2);
  expect(pixelsPerMm()).toBeCloseTo(5.2);
  expect(screenWidthMm()).toBe(154);
  screenOf(1280, 800, 2);
  expect([pixelsPerMm(), screenWidthMm()]).toEqual([expect.closeTo(5.2), 246]);
  screenOf(640, 400, 4);
  expect([pixelsPerMm(), screenWidthMm()]).toEqual([expect.closeTo(2.6), 246]);
});

test('a width that is typed after the card was held up counts instead of it', () => {
  screenOf(1280, 800, 2);
  keepCardScale(5.2);
  setScreenWidthMm(300);
  expect(screenWidthMm()).toBe(300);
});

test('what was kept and is no size of a screen does not count', () => {
  screenOf(1920, 1080);
  for (const nonsense of ['', 'x', '0', '-1', '1e9', 'NaN', 'Infinity']) {
    kept.set('shoulderline.mm-per-dot', nonsense);
    expect(screenWidthMm(), nonsense).toBe(531);
  }
});

test('numerals are 13 mm high for two metres, 4.5 mm in the hand, and between them as the screen is large', () => {
  expect([298, 200, 158, 70, 40].map(numeralMm)).toEqual([13, 13, 10.27, 4.55, 4.5]);
});
