import { MEASURES } from '#core/length/reading.ts';
import { NO_BREAK } from '#core/length/unbroken.ts';
import type { Units } from '#core/length/units.ts';
import { say } from '#core/words/say.ts';
import { measure } from '../shared/measure.svelte.ts';

/** Settings that name a tool. It is called by the size that is stamped on it, in whatever measure a screen is read. */
const TOOLS = ['chisel', 'blade', 'drum'];

/** Does this setting name a tool? */
export function isTool(setting: string): boolean {
  return TOOLS.includes(setting);
}

/** The sign behind a setting's number: an angle is in degrees, a tool in its own measure where the screen is read in another. */
export function signOf(setting: string, units: Units): string {
  if (setting === 'tilt') return '°';
  const [own] = MEASURES[units];
  return isTool(setting) && measure.of(units) !== own ? `${NO_BREAK}${say(`ui.unit.${own}`)}` : '';
}
