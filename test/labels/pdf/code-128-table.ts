/** Widths of bars and spaces for values 0 to 105 and the stop: ISO/IEC 15417, table 1 (memory). */
const PATTERNS =
  `212222 222122 222221 121223 121322 131222 122213 122312 132212 221213 221312 231212 112232 122132 122231
113222 123122 123221 223211 221132 221231 213212 223112 312131 311222 321122 321221 312212 322112 322211 212123 212321
232121 111323 131123 131321 112313 132113 132311 211313 231113 231311 112133 112331 132131 113123 113321 133121 313121
211331 231131 213113 213311 213131 311123 311321 331121 312113 312311 332111 314111 221411 431111 111224 111422 121124
121421 141122 141221 112214 112412 122114 122411 142112 142211 241211 221114 413111 241112 134111 111242 121142 121241
114212 124112 124211 411212 421112 421211 212141 214121 412121 111143 111341 131141 114113 114311 411113 411311 113141
114131 311141 411131 211412 211214 211232 2331112`.split(/\s+/);

/** The symbol values of bars given by their left and right ends in modules; the stop is not among them. */
export function valuesOf(bars: readonly (readonly [number, number])[]): number[] {
  const widths = bars.flatMap(([left, right], k) => {
    const next = bars[k + 1];
    return next === undefined ? [right - left] : [right - left, next[0] - right];
  });
  const values: number[] = [];
  for (let k = 0; k + 7 < widths.length; k += 6) {
    const value = PATTERNS.indexOf(widths.slice(k, k + 6).join(''));
    if (value < 0) throw new Error(`no such pattern: ${widths.slice(k, k + 6).join('')}`);
    values.push(value);
  }
  if (widths.slice(-7).join('') !== PATTERNS[106]) throw new Error('a symbol ends with the stop');
  return values;
}

/** ISO/IEC 15417: (start value + Σ position · value) mod 103. */
export function checkValue(values: readonly number[]): number {
  const [start = 0, ...data] = values;
  return data.reduce((total, value, k) => total + (k + 1) * value, start) % 103;
}
