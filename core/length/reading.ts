import { NO_BREAK } from './unbroken.ts';

/** A printed value made ready to be read: a whole number and perhaps a fraction; `near` when something was rounded away. */
export interface Shown {
  readonly whole: string;
  readonly numerator?: string;
  readonly denominator?: string;
  readonly near: boolean;
}

/** How values are shown: fractions of an inch to this denominator, or millimetres and decimals to this many places. */
export interface Rounding {
  readonly denominator: 16 | 32 | 64;
  readonly places: 1 | 2 | 3;
  /** Machines are set to half millimetres; what is no setting is shown to one place. */
  readonly half?: true | undefined;
}

/** To 1/64 in or 0.1 mm, where the shop does not say otherwise. */
export const USUAL_ROUNDING: Rounding = { denominator: 64, places: 1 };

/** The same, but never coarser than to 1/64 in: for numbers that differ by no more. */
export function fineRounding({ places }: Rounding): Rounding {
  return { denominator: 64, places };
}

/**
 * A plan's printed value for reading. Inches: itself where its denominator is a power of two up to the rounding's, else the
 * nearest such fraction. Millimetres: itself where it has no more places than the rounding, else rounded. Exact arithmetic.
 */
export function showValue(
  value: string | number,
  units: 'in' | 'mm',
  rounding: Rounding = USUAL_ROUNDING,
): Shown {
  if (typeof value === 'number') return { whole: String(value), near: false };
  const exact = readPrinted(value);
  if (exact === null) return { whole: value, near: false };
  return units === 'in'
    ? asFraction(exact.n, exact.d, BigInt(rounding.denominator))
    : asDecimal(exact.n, exact.d, rounding.places);
}

/** The same value in the other measure: 14 3/4 in is 374.7 mm; rounded, never exact. */
export function showOther(
  value: string | number,
  units: 'in' | 'mm',
  rounding: Rounding = USUAL_ROUNDING,
): Shown {
  const exact = readPrinted(String(value));
  if (exact === null) return { whole: String(value), near: false };
  return units === 'in'
    ? asDecimal(exact.n * 254n, exact.d * 10n, rounding.places)
    : asFraction(exact.n * 10n, exact.d * 254n, BigInt(rounding.denominator));
}

/** In which measure values are read: fractions of an inch, decimal inches, or millimetres. */
export type Measure = 'fractions' | 'decimals' | 'mm';

/** The measures in which a job's values can be read, its own first. */
export const MEASURES: Readonly<Record<'in' | 'mm', readonly [Measure, ...Measure[]]>> = {
  in: ['fractions', 'mm', 'decimals'],
  mm: ['mm', 'fractions'],
};

/** Decimal inches are read to a thousandth. */
const THOUSANDTHS = 3;

/** The value as it is read in a measure; a count or a word is the same in each. */
export function showIn(
  value: string | number,
  units: 'in' | 'mm',
  measure: Measure,
  rounding: Rounding = USUAL_ROUNDING,
): Shown {
  if (typeof value === 'number') return showValue(value, units, rounding);
  if (measure === 'decimals' && units === 'in') return showDecimal(value, THOUSANDTHS);
  return (measure === 'mm') === (units === 'mm')
    ? showValue(value, units, rounding)
    : showOther(value, units, rounding);
}

/** The value as decimals of its own unit. */
export function showDecimal(value: string | number, places = 4): Shown {
  const exact = readPrinted(String(value));
  return exact === null ? { whole: String(value), near: false } : asDecimal(exact.n, exact.d, places);
}

/** A shown value as one line of text that is never broken: "14 3/4", "≈ 6 17/64", no-break spaces between. */
export function shownText({ whole, numerator, denominator, near }: Shown): string {
  const fraction = numerator === undefined ? '' : `${numerator}/${denominator ?? ''}`;
  return [near ? '≈' : '', whole, fraction].filter((each) => each !== '').join(NO_BREAK);
}

function readPrinted(text: string): { readonly n: bigint; readonly d: bigint } | null {
  const mixed = /^(-)?(?:(\d+) )?(\d+)\/([1-9]\d*)$/.exec(text);
  if (mixed !== null) {
    const d = BigInt(mixed[4] ?? '1');
    const n = BigInt(mixed[2] ?? '0') * d + BigInt(mixed[3] ?? '0');
    return { n: mixed[1] === undefined ? n : -n, d };
  }
  const decimal = /^(-)?(\d+)(?:\.(\d+))?$/.exec(text);
  if (decimal === null) return null;
  const places = decimal[3] ?? '';
  const n = BigInt((decimal[2] ?? '0') + places);
  return { n: decimal[1] === undefined ? n : -n, d: 10n ** BigInt(places.length) };
}

/** n/d to the nearest multiple of 1/to; halves away from zero. */
function nearest(n: bigint, d: bigint, to: bigint): { readonly count: bigint; readonly near: boolean } {
  const sign = n < 0n ? -1n : 1n;
  const scaled = n * sign * to;
  return { count: sign * ((2n * scaled + d) / (2n * d)), near: scaled % d !== 0n };
}

function asFraction(n: bigint, d: bigint, to: bigint): Shown {
  const { count, near } = nearest(n, d, to);
  const sign = count < 0n ? '-' : '';
  const size = count < 0n ? -count : count;
  const whole = size / to;
  let rest = size % to;
  let denominator = to;
  while (rest !== 0n && rest % 2n === 0n) {
    rest /= 2n;
    denominator /= 2n;
  }
  if (rest === 0n) return { whole: `${sign}${whole}`, near };
  return {
    whole: whole === 0n ? sign : `${sign}${whole}`,
    numerator: String(rest),
    denominator: String(denominator),
    near,
  };
}

function asDecimal(n: bigint, d: bigint, places: number): Shown {
  const to = 10n ** BigInt(places);
  const { count, near } = nearest(n, d, to);
  const sign = count < 0n ? '-' : '';
  const size = count < 0n ? -count : count;
  const decimals = String(size % to)
    .padStart(places, '0')
    .replace(/0+$/, '');
  return { whole: `${sign}${size / to}${decimals === '' ? '' : `.${decimals}`}`, near };
}
