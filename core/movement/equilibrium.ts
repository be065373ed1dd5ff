/**
 * Equilibrium moisture content in percent, from temperature in °C and relative humidity from 0 to 1.
 * Source: Wood Handbook, FPL-GTR-190 (2010), eq. 4-5 (from memory). Leaves the fractions: a double.
 */
export function equilibriumMoisture(celsius: number, humidity: number): number {
  const t = celsius;
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = k * humidity;
  return (1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh));
}
