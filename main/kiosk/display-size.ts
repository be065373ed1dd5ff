import { spawnSync } from 'node:child_process';

/** Where on the display a window is to be, in its dots. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

type Ask = (command: string, args: readonly string[]) => string | null;

/**
 * The place that the kiosk's window takes: as told ("1280,800"), else the first monitor or the whole display, as xrandr or
 * xdpyinfo say. Null where neither is there: a window manager knows.
 */
export function displayPlace(told: string | undefined, ask: Ask = askTool): Place | null {
  const given = /^(\d+),(\d+)$/.exec(told ?? '');
  if (given !== null) return { x: 0, y: 0, width: Number(given[1]), height: Number(given[2]) };
  const monitors = ask('xrandr', ['--current']) ?? '';
  const monitor =
    MONITOR.exec(monitors.split('\n').find((line) => line.includes(' connected primary ')) ?? '') ??
    MONITOR.exec(monitors);
  if (monitor !== null) return placeOf(monitor[3], monitor[4], monitor[1], monitor[2]);
  const size =
    /\bcurrent (\d+) x (\d+)/.exec(monitors) ??
    /\bdimensions:\s+(\d+)x(\d+) pixels/.exec(ask('xdpyinfo', []) ?? '');
  return size === null ? null : placeOf('0', '0', size[1], size[2]);
}

const MONITOR = /^\S+ connected (?:primary )?(\d+)x(\d+)\+(\d+)\+(\d+)/m;

function placeOf(x = '', y = '', width = '', height = ''): Place | null {
  const place = { x: Number(x), y: Number(y), width: Number(width), height: Number(height) };
  return place.width > 0 && place.height > 0 ? place : null;
}

function askTool(command: string, args: readonly string[]): string | null {
  const ran = spawnSync(command, args, { encoding: 'utf8', timeout: 3000 });
  return ran.status === 0 ? ran.stdout : null;
}
