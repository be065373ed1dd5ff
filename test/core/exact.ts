/** Exact arithmetic on printed lengths, for laws that hold to the last figure. Shares no code with core. */
export interface Ratio {
  readonly n: bigint;
  readonly d: bigint;
}

/** A printed length: "14 3/4", "3/4", "0". */
export function ratio(printed: string | number | undefined): Ratio {
  const match = /^(?:(\d+)|(?:(\d+) )?(\d+)\/(\d+))$/.exec(String(printed));
  if (match === null) throw new Error(`no printed length: ${String(printed)}`);
  const [, alone, whole = '0', n = '0', d = '1'] = match;
  if (alone !== undefined) return { n: BigInt(alone), d: 1n };
  return { n: BigInt(whole) * BigInt(d) + BigInt(n), d: BigInt(d) };
}

export function plus(...all: readonly Ratio[]): Ratio {
  return all.reduce((a, b) => ({ n: a.n * b.d + b.n * a.d, d: a.d * b.d }));
}

export function minus(first: Ratio, ...others: readonly Ratio[]): Ratio {
  return others.reduce((a, b) => ({ n: a.n * b.d - b.n * a.d, d: a.d * b.d }), first);
}

export function multiplied(a: Ratio, by: number | Ratio): Ratio {
  return typeof by === 'number' ? { n: a.n * BigInt(by), d: a.d } : { n: a.n * by.n, d: a.d * by.d };
}

/** As the plan prints a length, so that a failed comparison reads as a woodworker would say it. */
export function printed({ n, d }: Ratio): string {
  const common = (a: bigint, b: bigint): bigint => (b === 0n ? a : common(b, a % b));
  const sign = n < 0n ? '-' : '';
  const size = n < 0n ? -n : n;
  const by = common(size, d);
  const [top, bottom] = [size / by, d / by];
  const [whole, rest] = [top / bottom, top % bottom];
  if (rest === 0n) return `${sign}${whole}`;
  return `${sign}${whole === 0n ? '' : `${whole} `}${rest}/${bottom}`;
}

/** Under 0, 0 or over 0 as one is less, equal or more than the other. */
export function compared(a: Ratio, b: Ratio): number {
  const gap = a.n * b.d - b.n * a.d;
  return gap < 0n ? -1 : gap > 0n ? 1 : 0;
}
