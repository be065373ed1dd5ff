import type { Units } from './units.ts';
import Fraction from 'fraction.js';
import { plainSpaces } from './unbroken.ts';
import type { Length } from './length.ts';

/** Why a text is no length: a stable code, and what would be right. */
export interface LengthFault {
  readonly code:
    'length-type' | 'length-form' | 'length-digits' | 'length-denominator' | 'length-units' | 'length-size';
  /** The text as a whole is too long, whatever is in it. */
  readonly kind?: 'text';
  readonly figures: Readonly<Record<string, string | number>>;
}

const DIGITS = 20;
const LONGEST_TEXT = 100;
/** Nothing in a workshop is longer: 1 000 ft, 300 m. It keeps every reckoned figure finite. */
const LIMIT: Readonly<Record<Units, number>> = { in: 12_000, mm: 300_000 };

/** A length as it is typed. */
const EXAMPLES: Readonly<Record<Units, string>> = { in: '14 3/4', mm: '375.5' };

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
    return refuse({ code: 'length-type', figures: { example: EXAMPLES[units] } });
  const text = typeof input === 'number' ? String(input) : plainSpaces(input);
  if (text.length > LONGEST_TEXT)
    return refuse({ code: 'length-digits', kind: 'text', figures: { count: text.length } });
  const got = JSON.stringify(text);
  const parts: Readonly<Partial<Record<string, string>>> | undefined = FORM.exec(text.trim())?.groups;
  if (parts === undefined || text.trim().replace(/^-/, '') === '' || text.trim() === '"')
    return refuse({ code: 'length-form', figures: { example: EXAMPLES[units], got } });
  if (units === 'mm' && (parts.feet !== undefined || parts.inches !== undefined))
    return refuse({ code: 'length-units', figures: { got } });
  if (
    Object.entries(parts).some(
      ([name, run]) => name !== 'sign' && (run ?? '').replace('.', '').length > DIGITS,
    )
  )
    return refuse({ code: 'length-digits', figures: { most: DIGITS, got } });
  const denominator = parts.d ?? parts.fd;
  if (denominator !== undefined && /^0+$/.test(denominator))
    return refuse({ code: 'length-denominator', figures: { got } });
  const fraction = new Fraction(parts.decimal ?? parts.whole ?? 0)
    .add(denominator === undefined ? 0 : new Fraction(`${parts.n ?? parts.fn ?? '0'}/${denominator}`))
    .add(parts.feet === undefined ? 0 : new Fraction(parts.feet).mul(12));
  if (fraction.compare(LIMIT[units]) > 0)
    return refuse({ code: 'length-size', figures: { most: LIMIT[units], units, got } });
  return { ok: true, value: (parts.sign === undefined ? fraction : fraction.neg()) as Length };
}

function refuse(fault: LengthFault): { ok: false; fault: LengthFault } {
  return { ok: false, fault };
}
