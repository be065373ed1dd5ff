import type { Length } from '../length/length.ts';
import { printLength } from '../length/print-length.ts';
import { shownText, showValue } from '../length/reading.ts';
import { type Language, say } from '../words/say.ts';
import type { SizeOf, StockSpec } from './stock.ts';

/** A stock told by its sizes, width before height, in its own units: "Sheet 8 1/2 × 11 in: 3 × 10 stickers of 2 5/8 × 1 in". */
export function stockWords(spec: StockSpec, language?: Language): string {
  const read = (value: Length) => shownText(showValue(printLength(value), spec.units));
  const size = ({ width, height }: SizeOf) =>
    say(`paper.in-${spec.units}`, { value: `${read(width)} × ${read(height)}` }, language);
  if (spec.kind === 'roll')
    return say('print.stock-roll', { label: size(spec.label), dpi: spec.dpi }, language);
  const { columns, rows } = spec;
  return say(
    'print.stock-sheet',
    { page: size(spec.page), columns, rows, label: size(spec.label) },
    language,
  );
}
