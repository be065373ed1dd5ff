/** Widths of bars and spaces in modules for values 0 to 105 and the stop: ISO/IEC 15417, table 1 (from memory; two decoders read all that is made of it). */
const PATTERNS =
  `212222 222122 222221 121223 121322 131222 122213 122312 132212 221213 221312 231212 112232 122132 122231
113222 123122 123221 223211 221132 221231 213212 223112 312131 311222 321122 321221 312212 322112 322211 212123 212321
232121 111323 131123 131321 112313 132113 132311 211313 231113 231311 112133 112331 132131 113123 113321 133121 313121
211331 231131 213113 213311 213131 311123 311321 331121 312113 312311 332111 314111 221411 431111 111224 111422 121124
121421 141122 141221 112214 112412 122114 122411 142112 142211 241211 221114 413111 241112 134111 111242 121142 121241
114212 124112 124211 411212 421112 421211 212141 214121 412121 111143 111341 131141 114113 114311 411113 411311 113141
114131 311141 411131 211412 211214 211232 2331112`.split(/\s+/);

const START = { B: 104, C: 105 } as const;
const SWITCH_TO = { B: 100, C: 99 } as const;
const STOP = 106;

type Set = keyof typeof START;

/**
 * The widths in modules of a Code 128's bars and spaces, a bar first: letters in set B, digits in pairs in set C, so that
 * it comes out as short as it can; its check value is (start + Σ position · value) mod 103. Printable ASCII alone.
 */
export function code128Widths(text: string): number[] {
  const values = shortest(text);
  const check = values.reduce((total, value, k) => total + Math.max(1, k) * value, 0) % 103;
  return [...values, check, STOP].flatMap((value) => [...(PATTERNS[value] ?? '')].map(Number));
}

/** Start and symbols of a text, the fewest: worked out from its end, for both sets that may be in force there. */
function shortest(text: string): number[] {
  if (!/^[ -~]+$/.test(text)) throw new Error(`no Code 128 is made of ${JSON.stringify(text)}`);
  // From each character on, with a set in force: the symbols to the end. No symbols can be in set C where no pair follows.
  const from: { B: number[]; C: number[] | null }[] = [];
  from[text.length] = { B: [], C: [] };
  for (let at = text.length - 1; at >= 0; at -= 1) {
    const next = from[at + 1]?.B ?? [];
    const pair = /^\d\d/.exec(text.slice(at, at + 2))?.[0];
    const afterPair = pair === undefined ? undefined : from[at + 2]?.C;
    const inB = [text.charCodeAt(at) - 32, ...next];
    const inC = pair === undefined || afterPair == null ? null : [Number(pair), ...afterPair];
    const toC = inC === null ? inB : [SWITCH_TO.C, ...inC];
    const best = toC.length < inB.length ? toC : inB;
    const toB = [SWITCH_TO.B, ...inB];
    from[at] = { B: best, C: inC === null || toB.length < inC.length ? toB : inC };
  }
  const whole = from[0];
  const ways: [Set, readonly number[]][] = [['B', whole?.B ?? []]];
  if (whole?.C != null) ways.push(['C', whole.C]);
  const [set, symbols] = ways.reduce((a, b) => (b[1].length < a[1].length ? b : a));
  return [START[set], ...symbols];
}
