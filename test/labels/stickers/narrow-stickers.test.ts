import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';
import { readProfile } from '#core/shop/read-profile.ts';
import { allStocks } from '#core/stickers/read-stocks.ts';
import type { Stocks } from '#core/stickers/stock.ts';
import { STOCKS } from '#labels/stickers/stock-in-points.ts';
import { stickersPdf } from '#labels/stickers/stickers-pdf.ts';
import type { SymbolKind } from '#labels/pdf/symbol.ts';
import worked from '../../fixtures/worked-example.json' with { type: 'json' };
import { symbolsOf } from '../read-operators.ts';
import { boxTroubles, readingOf, stickersOf, stockOf, textTroubles } from './sticker-checks.ts';

function planOf(job: unknown): Plan {
  const planned = planFile(job);
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return planned.value;
}

const longNamed = planOf({
  format: 1,
  job: 'W'.repeat(60),
  units: 'mm',
  doors: [
    {
      mark: 'Größe 12',
      opening: { width: '550.5', height: '1200' },
      midRails: [{ width: '76.5', centre: '280.5' }],
    },
  ],
});

/** Everything that is wrong with a plan's stickers on a stock: what overlaps or is cut off, and what does not read as the plan says. */
async function troublesOf(plan: Plan, stock: string, symbol: SymbolKind, stocks: Stocks = STOCKS) {
  const made = await stickersPdf(plan, { stock, stocks, symbol });
  if (!made.ok) throw new Error(JSON.stringify(made));
  const inPoints = stockOf(stock, stocks);
  const found = await stickersOf(made.pdf, inPoints, made.stickers);
  const readings = found.map(({ texts }) => readingOf(texts));
  const read = plan.doors.flatMap((door) =>
    door.parts.flatMap((part) => {
      const own = readings.filter((each) => each.replaceAll(' ', '').includes(part.code));
      return own.length === 0 ? [`${part.code} on no sticker`] : textTroubles(plan, door, part, own);
    }),
  );
  return { made, troubles: [...found.flatMap((each) => boxTroubles(each, inPoints)), ...read] };
}

for (const symbol of ['code128', 'datamatrix'] as const)
  test(`a word longer than a sticker goes on on the next one, and no part is refused for it (${symbol})`, async () => {
    const { made, troubles } = await troublesOf(longNamed, 'roll-2x1', symbol);
    expect(troubles).toEqual([]);
    expect(made.doubled).toHaveLength(made.parts);
  });

test('a sticker too narrow for part and mark on one line has them on several, and the code on two', async () => {
  const read = readProfile(
    { stocks: { narrow: { kind: 'roll', label: { width: '1 1/4', height: '1 1/4' }, gap: '1/8' } } },
    'in',
  );
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const plan = planOf({ ...worked, doors: worked.doors.map((door) => ({ ...door, mark: 'WWWWWWWWWWWW' })) });
  const { made, troubles } = await troublesOf(plan, 'narrow', 'datamatrix', allStocks(read.value.stocks));
  expect(troubles).toEqual([]);
  expect(made.stickers).toBeGreaterThan(made.parts);
});

test('a Data Matrix has modules of 4 dots or more on every stock that comes with the program, so that it stands a smear', async () => {
  const plan = planOf(worked);
  for (const name of Object.keys(STOCKS)) {
    const made = await stickersPdf(plan, { stock: name, symbol: 'datamatrix' });
    if (!made.ok) throw new Error(JSON.stringify(made));
    const [symbol] = await symbolsOf(made.pdf);
    if (symbol === undefined) throw new Error('every sticker has a symbol');
    // Ten characters are a matrix of 14 by 14, drawn a hair smaller than its dots.
    const dots = ((symbol.right - symbol.left) / 14) * (stockOf(name).dpi / 72);
    expect(Math.round(dots)).toBeGreaterThanOrEqual(4);
    expect(Math.abs(dots - Math.round(dots))).toBeLessThan(0.01);
  }
});

for (const symbol of ['code128', 'datamatrix'] as const)
  test(`a code of the widest letters fits every stock that comes with the program (${symbol})`, async () => {
    const [door] = planOf(worked).doors;
    if (door === undefined) throw new Error('no door');
    const codes = ['WWWWWWWWWW', 'WMWQWMWQWM', 'QQQQQQQQQQ', '3WMMMUJQV3', 'MMMMMMMMMM'];
    const parts = door.parts.map((part, k) => ({ ...part, code: codes[k % codes.length] ?? '' }));
    const plan = { ...planOf(worked), doors: [{ ...door, parts }] };
    for (const stock of Object.keys(STOCKS)) {
      const { troubles } = await troublesOf(plan, stock, symbol);
      expect(troubles, stock).toEqual([]);
    }
  });
