import type { Length } from './length.ts';
import { parseLength } from './parse-length.ts';
import type { Units } from './units.ts';

/** A length that a plan printed, read back. Throws where it is none: plans print only what can be read. */
export function readPrinted(value: string | number, units: Units): Length {
  const read = parseLength(value, units);
  if (!read.ok) throw new Error(`the plan prints lengths that can be read; got ${JSON.stringify(value)}`);
  return read.value;
}
