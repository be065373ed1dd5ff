import { printLength } from '#core/length/print-length.ts';
import { length, type Length } from '#core/length/length.ts';
import { inUnits, type StockSpec, type Stocks } from '#core/stickers/stock.ts';
import { say } from '#core/words/say.ts';
import { newDocument } from '../pdf/typeface.ts';
import { PageStream } from '../pdf/page-stream.ts';
import { perPage, placeOn, type Stock, stockNamed, STOCKS } from './stock-in-points.ts';

/** Thickness of the printed lines: thin enough to read a rule against. */
const HAIR = 0.4;
const CROSS = 9;

/**
 * A page to hold against a stock of stickers: every sticker's outline, a cross at the first one's upper left corner with its true distances from the page's edges,
 * and a check line across and along. What differs goes into the stock's `adjust`. Null where there is no such stock.
 */
export async function calibrationPdf(name: string, stocks: Stocks = STOCKS): Promise<Uint8Array | null> {
  const stock = stockNamed(name, stocks);
  if (stock === null) return null;
  const { document, faces } = await newDocument(say('paper.calibration', { stock: name }));
  const page = new PageStream(faces);
  outlines(page, stock);
  const lines = checkLines(stock.spec);
  checkLine(page, stock, lines.across, 'across');
  checkLine(page, stock, lines.along, 'along');
  const first = placeOn(stock, 0);
  cross(page, first.x, first.y + stock.label.height);
  const words = instructions(stock, lines);
  const { x, y } = placeOn(stock, perPage(stock) > 2 * stock.columns ? stock.columns : 0);
  let base = y + stock.label.height - 8 - CROSS;
  const size = perPage(stock) > 1 ? 8 : 6;
  for (const line of words) {
    page.text(line, x + stock.margin + CROSS, base, size);
    base -= size * 1.25;
  }
  page.finish(document, stock.page);
  return document.save({ useObjectStreams: true });
}

/** How long the check lines are: the most whole inches (or 50 mm) that the page has room for, 6 in (150 mm) at most. */
export function checkLines(spec: StockSpec): { readonly across: Length; readonly along: Length } {
  const room = spec.kind === 'sheet' ? spec.page : spec.label;
  const [step, most] = spec.units === 'in' ? [1, 6] : [25, 150];
  const long = (side: Length) => {
    const fit = side.mul(4).div(5).div(step).floor().valueOf();
    return length(Math.min(most, Math.max(1, fit) * step), fit < 1 ? 2 : 1);
  };
  return { across: long(room.width), along: long(room.height) };
}

function outlines(page: PageStream, stock: Stock): void {
  const { width, height } = stock.label;
  for (let k = 0; k < perPage(stock); k += 1) {
    const { x, y } = placeOn(stock, k);
    page.line(x, y, x + width, y, HAIR);
    page.line(x, y + height, x + width, y + height, HAIR);
    page.line(x, y, x, y + height, HAIR);
    page.line(x + width, y, x + width, y + height, HAIR);
  }
}

function cross(page: PageStream, x: number, y: number): void {
  page.line(Math.max(0, x - CROSS), y, x + CROSS, y, 1);
  page.line(x, y - CROSS, x, y + CROSS, 1);
}

/** A line with ticks at its ends, in the middle of the page. */
function checkLine(
  page: PageStream,
  { page: size, spec }: Stock,
  long: Length,
  way: 'across' | 'along',
): void {
  const points = inUnits(long, spec.units, 'in').valueOf() * 72;
  const tick = 5;
  if (way === 'across') {
    const [x, y] = [(size.width - points) / 2, size.height / 2];
    page.line(x, y, x + points, y, HAIR);
    for (const end of [x, x + points]) page.line(end, y - tick, end, y + tick, HAIR);
    return;
  }
  const [x, y] = [size.width * 0.9, (size.height - points) / 2];
  page.line(x, y, x, y + points, HAIR);
  for (const end of [y, y + points]) page.line(x - tick, end, x + tick, end, HAIR);
}

function instructions(stock: Stock, lines: ReturnType<typeof checkLines>): string[] {
  const { spec } = stock;
  const shown = (value: Length) => say(`paper.in-${spec.units}`, { value: printLength(value) });
  const checks = say('paper.calibration-lines', { across: shown(lines.across), along: shown(lines.along) });
  if (spec.kind === 'roll') return [say('paper.calibration-roll'), checks];
  return [
    say('paper.calibration-corner', { left: shown(spec.left), top: shown(spec.top) }),
    say('paper.calibration-move'),
    checks,
    say('paper.calibration-scale'),
  ];
}
