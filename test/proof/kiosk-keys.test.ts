import type { CDPSession, Page } from '@playwright/test';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Kiosk, until } from '../e2e/kiosk-process.ts';
import { differing, Display, lacking } from './kiosk-display.ts';

/**
 * Real keys and a real mouse on a real window: `npm start` under a window manager that binds no key but Alt+F4. After each
 * the screen must be as it was, to the dot, in the same window, with the same page in it and the same hub behind it.
 */
const SIZE = '1366x768';
/** It may have to be built first. */
const PATIENCE_MS = 120_000;
const missing = lacking();
let display: Display;
let kiosk: Kiosk;
let page: Page;
let touch: CDPSession;

beforeAll(async () => {
  expect(missing, 'what this proof needs and is not here').toEqual([]);
  display = await Display.open(SIZE, [
    'openbox',
    '--config-file',
    join(import.meta.dirname, 'openbox-alt-f4.xml'),
  ]);
  kiosk = await Kiosk.open({ DISPLAY: display.name });
  page = await kiosk.page();
  touch = await page.context().newCDPSession(page);
}, PATIENCE_MS);
afterAll(async () => {
  await kiosk.close();
  display.close();
}, PATIENCE_MS);

interface Gesture {
  readonly name: string;
  /** Who makes it: xdotool where it can, else Chromium's own input. */
  readonly by: 'xdotool' | 'CDP';
  make(): unknown;
}

const key = (name: string, combination: string): Gesture => ({
  name,
  by: 'xdotool',
  make: () => display.xdotool('key', '--clearmodifiers', combination),
});
const click = (name: string, ...args: string[]): Gesture => ({
  name,
  by: 'xdotool',
  make: () => display.xdotool('mousemove', '683', '600', ...args),
});
const finger = (
  type: 'touchStart' | 'touchMove' | 'touchEnd',
  ...touchPoints: { x: number; y: number; id?: number }[]
) => touch.send('Input.dispatchTouchEvent', { type, touchPoints });

async function drop(data: { files?: string[]; items?: { mimeType: string; data: string }[] }): Promise<void> {
  const dragged = { items: data.items ?? [], files: data.files ?? [], dragOperationsMask: 1 };
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const)
    await touch.send('Input.dispatchDragEvent', { type, x: 683, y: 400, data: dragged });
}

async function slide(from: [number, number], to: [number, number]): Promise<void> {
  const steps = 12;
  await finger('touchStart', { x: from[0], y: from[1] });
  for (let k = 1; k <= steps; k += 1) {
    await finger('touchMove', {
      x: from[0] + ((to[0] - from[0]) * k) / steps,
      y: from[1] + ((to[1] - from[1]) * k) / steps,
    });
    await pause(16);
  }
  await finger('touchEnd');
}

const CTRL = [
  'n',
  't',
  'w',
  'p',
  'o',
  's',
  'u',
  'l',
  'j',
  'f',
  'g',
  'h',
  'd',
  'e',
  'k',
  'q',
  'r',
  'plus',
  'minus',
  '0',
  'Tab',
  'F4',
  'F5',
  '1',
  '9',
];
const SHIFTED = [
  'i',
  'j',
  'c',
  't',
  'n',
  'w',
  'b',
  'o',
  'a',
  'd',
  'm',
  'p',
  'r',
  's',
  'u',
  'q',
  'Delete',
  'Tab',
];
const ALT = ['Left', 'Right', 'Home', 'd', 'e', 'f', 'F10', 'space', 'Tab'];
const MEDIA = [
  'Back',
  'Forward',
  'HomePage',
  'Refresh',
  'Search',
  'Favorites',
  'Mail',
  'Calculator',
  'ZoomIn',
  'ZoomOut',
];

const GESTURES: Gesture[] = [
  ...CTRL.map((name) => key(`Ctrl+${name}`, `ctrl+${name}`)),
  ...SHIFTED.map((name) => key(`Ctrl+Shift+${name}`, `ctrl+shift+${name}`)),
  ...Array.from({ length: 12 }, (_none, k) => key(`F${k + 1}`, `F${k + 1}`)),
  ...Array.from({ length: 12 }, (_none, k) => key(`Shift+F${k + 1}`, `shift+F${k + 1}`)),
  ...ALT.map((name) => key(`Alt+${name}`, `alt+${name}`)),
  ...MEDIA.map((name) => key(`key ${name}`, `XF86${name}`)),
  key('Shift+Esc', 'shift+Escape'),
  key('Esc', 'Escape'),
  key('Menu key', 'Menu'),
  key('Super', 'super'),
  key('Super+d', 'super+d'),
  click('right click', 'click', '3'),
  click('middle click', 'click', '2'),
  click('mouse button back', 'click', '8'),
  click('mouse button forward', 'click', '9'),
  click('Ctrl+wheel', 'keydown', 'ctrl', 'click', '4', 'click', '4', 'keyup', 'ctrl'),
  click('Shift+click', 'keydown', 'shift', 'click', '1', 'keyup', 'shift'),
  click('drag of the page', 'mousedown', '1', 'mousemove', '300', '100', 'mouseup', '1', 'click', '1'),
  {
    name: 'long press',
    by: 'CDP',
    make: async () => {
      await finger('touchStart', { x: 683, y: 600 });
      await pause(1200);
      await finger('touchEnd');
    },
  },
  {
    name: 'pinch',
    by: 'CDP',
    make: () =>
      touch.send('Input.synthesizePinchGesture', { x: 683, y: 384, scaleFactor: 2, relativeSpeed: 800 }),
  },
  {
    name: 'pinch with two fingers',
    by: 'CDP',
    make: async () => {
      const two = (apart: number) => [
        { x: 683 - apart, y: 600, id: 0 },
        { x: 683 + apart, y: 600, id: 1 },
      ];
      await finger('touchStart', ...two(40));
      for (let apart = 40; apart <= 300; apart += 20) {
        await finger('touchMove', ...two(apart));
        await pause(16);
      }
      await finger('touchEnd');
    },
  },
  { name: 'swipe back', by: 'CDP', make: () => slide([10, 600], [1200, 600]) },
  { name: 'swipe forward', by: 'CDP', make: () => slide([1350, 600], [100, 600]) },
  { name: 'pull down', by: 'CDP', make: () => slide([683, 60], [683, 700]) },
  {
    name: 'file drop',
    by: 'CDP',
    make: () => {
      const file = join(kiosk.data, 'dropped.html');
      writeFileSync(file, '<h1>not ours</h1>');
      return drop({ files: [file] });
    },
  },
  {
    name: 'text drop',
    by: 'CDP',
    make: () => drop({ items: [{ mimeType: 'text/plain', data: 'about:blank' }] }),
  },
  {
    name: 'link drop',
    by: 'CDP',
    make: () => drop({ items: [{ mimeType: 'text/uri-list', data: 'http://127.0.0.1:1/' }] }),
  },
];

/** What is not as it was. */
async function changed(
  before: string,
  after: string,
  pages: readonly string[],
  windows: number,
  zoom: string,
): Promise<string[]> {
  const wrong: string[] = [];
  const dots = differing(before, after);
  if (dots > 0) wrong.push(`${dots} dots differ`);
  if (display.windows() !== windows) wrong.push(`${display.windows()} windows`);
  if (await page.evaluate(() => !('held' in window)).catch(() => true)) wrong.push('another page');
  else if ((await page.evaluate(ZOOM)) !== zoom) wrong.push('zoomed');
  const now = await kiosk.pages(page).catch(() => ['none']);
  if (now.join() !== pages.join()) wrong.push(now.join(', '));
  return wrong;
}

const ZOOM = '`${devicePixelRatio} ${visualViewport.scale} ${innerWidth}x${innerHeight}`';

/** The station that this screen stands at, reached over another page, so that there is somewhere to go back to. */
async function atStation(url: string): Promise<void> {
  await page.goto(`${url}/board`);
  await page.goto(`${url}/station/milling`);
  await page.locator('body').waitFor();
  await page.evaluate(() => Object.assign(window, { held: true }));
  display.xdotool('mousemove', '683', '600');
  await pause(1500);
}

test('no key, no mouse and no finger leaves the screen', async () => {
  const url = await kiosk.listened(1);
  await atStation(url);
  let zoom = String(await page.evaluate(ZOOM));
  const hub = kiosk.hub();
  expect(zoom).toContain(SIZE);
  const before = join(kiosk.data, 'before.png');
  const after = join(kiosk.data, 'after.png');
  display.picture(before);
  const windows = display.windows();
  const pages = await kiosk.pages(page);
  const table: string[] = [];
  const broken: string[] = [];
  const only = process.env.ONLY?.split(',');
  for (const gesture of GESTURES.filter(({ name }) => only?.includes(name) ?? true)) {
    await gesture.make();
    await pause(450);
    display.xdotool('mousemove', '683', '600');
    display.picture(after);
    const wrong = await changed(before, after, pages, windows, zoom);
    table.push(
      `${gesture.name.padEnd(24)} ${gesture.by.padEnd(8)} ${wrong.length === 0 ? 'held' : `NOT HELD: ${wrong.join('; ')}`}`,
    );
    if (wrong.length === 0) continue;
    broken.push(gesture.name);
    if (process.env.KEEP_SCREENS !== undefined)
      display.picture(join('/tmp', `kiosk-${gesture.name.replace(/\W/g, '-')}.png`));
    await recover(url);
    // How large a page is shown, the browser keeps for the next window.
    zoom = String(await page.evaluate(ZOOM));
    display.picture(before);
  }
  console.log(table.join('\n'));
  expect(broken).toEqual([]);
  expect(kiosk.hub()).toBe(hub);
}, 600_000);

/** After something that was not held: the window is closed and opened anew. */
async function recover(url: string): Promise<void> {
  process.kill(kiosk.browser(), 'SIGTERM');
  await pause(1500);
  page = await kiosk.page();
  touch = await page.context().newCDPSession(page);
  await atStation(url);
}

test('a window closed by the window manager’s Alt+F4 comes back at its station; the hub stays', async () => {
  const hub = kiosk.hub();
  const browser = kiosk.browser();
  display.xdotool('key', '--clearmodifiers', 'alt+F4');
  await until('the window to close', () => kiosk.otherBrowser(browser));
  page = await kiosk.page();
  expect(kiosk.hub()).toBe(hub);
  expect(kiosk.start.exitCode).toBeNull();
  expect(new URL(page.url()).origin).toBe(await kiosk.listened(1));
});
