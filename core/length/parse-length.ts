import type { Units } from './units.ts';
import Fraction from 'fraction.js';
import { plainSpaces } from './unbroken.ts';
import type { Length } from './length.ts';

/** Why a text is no length: a stable code and plain words. */
export interface LengthFault {
  readonly code:
    'length-type' | 'length-form' | 'length-digits' | 'length-denominator' | 'length-units' | 'length-size';
  readonly message: string;
}

const DIGITS = 20;
const LONGEST_TEXT = 100;
/** Nothing in a workshop is longer: 1 000 ft, 300 m. It keeps every reckoned figure finite. */
const LIMIT: Readonly<Record<Units, number>> = { in: 12_000, mm: 300_000 };

const FORM =
  /^(?<sign>-)?(?:(?<feet>\d+)'(?: ?(?=\d)|$))?(?:(?<decimal>\d+\.\d+|\.\d+)|(?<whole>\d+)(?:[ -](?<n>\d+)\/(?<d>\d+))?|(?<fn>\d+)\/(?<fd>\d+))?(?<inches>")?$/;

/**
 * A length from text ("14 3/4", "14-3/4", "3/4", "14.75", `14 3/4"`, "1' 2 3/4\"") or from a JSON number, taken
 * through its decimal text. Exact. No exponent, at most 20 digits a number, nothing empty; feet and inch marks only
 * in an inch job.
 */
export function parseLength(
  input: unknown,
  units: Units,
): { ok: true; value: Length } | { ok: false; fault: LengthFault } {
  if (typeof input !== 'string' && typeof input !== 'number')
    return refuse(
      'length-type',
      `expected a length as text or number, for example "${example(units)}"; got ${nameOfType(input)}`,
    );
  const text = typeof input === 'number' ? String(input) : plainSpaces(input);
  if (text.length > LONGEST_TEXT)
    return refuse(
      'length-digits',
      `expected a length of a few digits; got a text of ${text.length} characters`,
    );
  const parts: Readonly<Partial<Record<string, string>>> | undefined = FORM.exec(text.trim())?.groups;
  if (parts === undefined || text.trim().replace(/^-/, '') === '' || text.trim() === '"')
    return refuse(
      'length-form',
      `expected a length like "${example(units)}", "3/4" or 14.75; got ${JSON.stringify(text)}`,
    );
  if (units === 'mm' && (parts.feet !== undefined || parts.inches !== undefined))
    return refuse(
      'length-units',
      `this job is in millimetres, so no feet or inch marks; got ${JSON.stringify(text)}`,
    );
  if (
    Object.entries(parts).some(
      ([name, run]) => name !== 'sign' && (run ?? '').replace('.', '').length > DIGITS,
    )
  )
    return refuse('length-digits', `at most ${DIGITS} digits a number; got ${JSON.stringify(text)}`);
  const denominator = parts.d ?? parts.fd;
  if (denominator !== undefined && /^0+$/.test(denominator))
    return refuse('length-denominator', `the bottom of a fraction cannot be 0; got ${JSON.stringify(text)}`);
  const fraction = new Fraction(parts.decimal ?? parts.whole ?? 0)
    .add(denominator === undefined ? 0 : new Fraction(`${parts.n ?? parts.fn ?? '0'}/${denominator}`))
    .add(parts.feet === undefined ? 0 : new Fraction(parts.feet).mul(12));
  if (fraction.compare(LIMIT[units]) > 0)
    return refuse('length-size', `at most ${LIMIT[units]} ${units}; got ${JSON.stringify(text)}`);
  return { ok: true, value: (parts.sign === undefined ? fraction : fraction.neg()) as Length };
}

function refuse(code: LengthFault['code'], message: string): { ok: false; fault: LengthFault } {
  return { ok: false, fault: { code, message } };
}

function example(units: Units): string {
  return units === 'in' ? '14 3/4' : '375.5';
}

/** What a wrong value is, in a word, for a message. */
export function nameOfType(input: unknown): string {
  if (input === null) return 'null';
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'object') return 'an object';
  if (input === undefined) return 'nothing';
  return typeof input === 'boolean' ? String(input) : `a ${typeof input}`;
}
