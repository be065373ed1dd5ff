// @vitest-environment node

import { expect, test } from 'vitest';
import { leavesScreen } from '#ui/kiosk.ts';
import { numeralSize } from '#ui/screen-size.ts';

const key = (name: string, more: object = {}) => ({
  key: name,
  ctrlKey: false,
  altKey: false,
  metaKey: false,
  shiftKey: false,
  ...more,
});

test.each(['t', 'n', 'w', 'q', 'r', 'p', 'o', 'l', 'j', '+', 'Tab'])(
  'Ctrl+%s does not reach the browser',
  (name) => {
    expect(leavesScreen(key(name, { ctrlKey: true }))).toBe(true);
  },
);

test('function keys, Alt and the system’s key do not leave the screen; plain and editing keys work', () => {
  expect(leavesScreen(key('F11'))).toBe(true);
  expect(leavesScreen(key('F4', { altKey: true }))).toBe(true);
  expect(leavesScreen(key('Tab', { altKey: true }))).toBe(true);
  expect(leavesScreen(key('d', { metaKey: true }))).toBe(true);
  expect(leavesScreen(key('F'))).toBe(false);
  expect(leavesScreen(key('Tab'))).toBe(false);
  expect(leavesScreen(key('v', { ctrlKey: true }))).toBe(false);
});

test.each(['i', 'j', 'c', 't', 'n', 'a', 'Delete'])('Ctrl+Shift+%s does not reach the browser', (name) => {
  expect(leavesScreen(key(name, { ctrlKey: true, shiftKey: true }))).toBe(true);
});

test('the browser’s task manager and the keys of their own for browser and programs are held; Esc alone works', () => {
  expect(leavesScreen(key('Escape', { shiftKey: true }))).toBe(true);
  expect(leavesScreen(key('Escape'))).toBe(false);
  for (const name of ['BrowserBack', 'BrowserHome', 'LaunchMail', 'ZoomIn', 'Find'])
    expect(leavesScreen(key(name))).toBe(true);
  expect(leavesScreen(key('Enter', { shiftKey: true }))).toBe(false);
  expect(leavesScreen(key('V', { ctrlKey: true, shiftKey: true }))).toBe(false);
  expect(leavesScreen(key('A', { shiftKey: true }))).toBe(false);
});

test('numerals stand 13 mm high: on a 24-inch screen of 1920 pixels their type is about 70 pixels', () => {
  const size = numeralSize(1920, 531);
  expect((size * 0.668 * 531) / 1920).toBeGreaterThanOrEqual(13);
  expect(size).toBeLessThan(75);
});
