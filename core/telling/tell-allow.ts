import { type Length, length, over, sign, smaller, times } from '../length/length.ts';
import { limitsFor } from '../length/limits.ts';
import { printLength } from '../length/print-length.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import type { Allowed } from '../plan/plan.ts';
import { type Language, say, type WordKey } from '../words/say.ts';

type Way = Extract<WordKey, `allow.${string}.less`> extends `allow.${infer W}.less` ? W : never;

/** Which way a setting is off when it is too small or too large, by its name. */
const WAYS: Readonly<Partial<Record<string, Way>>> = {
  depthFromEdge: 'depth',
  depth: 'depth',
  start: 'end',
  stop: 'end',
  outerHeight: 'height',
  innerHeight: 'height',
  height: 'height',
  length: 'length',
  width: 'width',
  tongue: 'thickness',
};

/** The least freedom that is said as a length, and down to whose multiples it is said. */
const STEP: Readonly<Record<Units, Length>> = { in: length(1, 64), mm: length(1, 10) };

/**
 * How exact a setting must be, in a sentence: to the line, or up to how much this way or that. Never more than 1/16 in
 * (1.5 mm) of freedom, and never more than there is. `read` tells a printed length in the measure that is shown.
 */
export function tellAllow(
  name: string,
  { less, more, lessBy = '', moreBy = '' }: Allowed,
  units: Units,
  read: (printed: string) => string,
  language?: Language,
): string {
  const way = WAYS[name] ?? 'length';
  const ways = { less: say(`allow.${way}.less`, {}, language), more: say(`allow.${way}.more`, {}, language) };
  const [under, above] = [freedom(less, units, read, language), freedom(more, units, read, language)];
  if (under !== null && above !== null)
    return say('allow.both', { less: under, lessWay: ways.less, more: above, moreWay: ways.more }, language);
  if (under !== null)
    return say('allow.only', { by: under, way: ways.less, never: ways.more, bound: moreBy }, language);
  if (above !== null)
    return say('allow.only', { by: above, way: ways.more, never: ways.less, bound: lessBy }, language);
  return say('allow.exact', { bound: [...new Set([lessBy, moreBy])].join('; ') }, language);
}

/** What is said of a printed freedom; null where there is none. */
function freedom(
  printed: string,
  units: Units,
  read: (printed: string) => string,
  language?: Language,
): string | null {
  const all = readPrinted(printed, units);
  if (sign(all) === 0) return null;
  const most = smaller(all, limitsFor(units).sixteenth);
  const steps = over(most, STEP[units]).floor().valueOf();
  return steps === 0 ? say('allow.hair', {}, language) : read(printLength(times(STEP[units], steps)));
}
