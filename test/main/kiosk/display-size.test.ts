import { expect, test } from 'vitest';
import { displayPlace } from '#main/kiosk/display-size.ts';

const XRANDR = `Screen 0: minimum 320 x 200, current 3286 x 1080, maximum 16384 x 16384
eDP-1 connected 1366x768+1920+0 (normal left inverted right x axis y axis) 309mm x 173mm
   1366x768      60.00*+
HDMI-1 connected primary 1920x1080+0+0 (normal left inverted right x axis y axis) 531mm x 299mm
   1920x1080     60.00*+
DP-1 disconnected (normal left inverted right x axis y axis)
`;
const XDPYINFO = `name of display:    :7
screen #0:
  dimensions:    1280x800 pixels (338x211 millimeters)
`;
const answering =
  (answers: Readonly<Record<string, string>>) =>
  (command: string): string | null =>
    answers[command] ?? null;

test('the window takes the first of several monitors', () => {
  expect(displayPlace(undefined, answering({ xrandr: XRANDR, xdpyinfo: XDPYINFO }))).toEqual({
    x: 0,
    y: 0,
    width: 1920,
    height: 1080,
  });
});

test('where none is the first, it takes one that is there, wherever that lies', () => {
  const none = XRANDR.replace('primary ', '');
  expect(displayPlace(undefined, answering({ xrandr: none }))).toEqual({
    x: 1920,
    y: 0,
    width: 1366,
    height: 768,
  });
});

test('a display without monitors, or without xrandr, is taken whole', () => {
  const bare = 'Screen 0: minimum 1 x 1, current 1024 x 600, maximum 1024 x 600\n';
  expect(displayPlace(undefined, answering({ xrandr: bare }))).toMatchObject({ width: 1024, height: 600 });
  expect(displayPlace(undefined, answering({ xdpyinfo: XDPYINFO }))).toMatchObject({
    width: 1280,
    height: 800,
  });
});

test('a size told from outside counts; where nothing tells, none is made up', () => {
  const all = answering({ xrandr: XRANDR });
  expect(displayPlace('800,480', all)).toEqual({ x: 0, y: 0, width: 800, height: 480 });
  expect(displayPlace('large', answering({}))).toBeNull();
  expect(displayPlace(undefined, answering({}))).toBeNull();
});
