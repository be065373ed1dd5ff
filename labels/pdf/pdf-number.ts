/** A number as a PDF operand: to a thousandth of a point (0.4 µm), never in exponent form. */
export function number(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return rounded === 0 ? '0' : String(rounded);
}
