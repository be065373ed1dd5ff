import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { readProfile } from '#core/shop/read-profile.ts';
import { speakSaying } from '#core/telling/speak-saying.ts';
import { allStocks } from '#core/stickers/read-stocks.ts';
import { calibrationPdf } from '#labels/stickers/calibration-pdf.ts';
import { placeOn, stockNamed } from '#labels/stickers/stock-in-points.ts';
import { stickersPdf } from '#labels/stickers/stickers-pdf.ts';
import worked from '../../fixtures/worked-example.json' with { type: 'json' };
import { textsOf } from '../read-pdf.ts';

const planned = planFile(worked);
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const plan = planned.value;

function stocksOf(stocks: unknown) {
  const read = readProfile({ stocks }, 'in');
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return allStocks(read.value.stocks);
}

test('a symbol that cannot keep its modules and white edges on a stock is refused with the stocks that can', async () => {
  const stocks = stocksOf({
    // A Code 128 of ten characters is about 150 modules and 20 of white, each 2 dots of 203 dpi: 1.6 in.
    narrow: { kind: 'roll', label: { width: '1 1/4', height: '1' }, gap: '1/8' },
  });
  const bars = await stickersPdf(plan, { stock: 'narrow', stocks });
  expect(bars).toMatchObject({ ok: false, fault: 'symbol' });
  if (bars.ok || bars.fault !== 'symbol') throw new Error('refused');
  expect(speakSaying(bars.told, 'en')).toContain('it fits letter-3x10, a4-3x8, roll-2x1, roll-3x1, roll-4x2');
  expect(await stickersPdf(plan, { stock: 'narrow', stocks, symbol: 'datamatrix' })).toMatchObject({
    ok: true,
  });
});

test('a sheet begins at the position that is asked for, and refuses one that it has not', async () => {
  const at = async (from: number) => {
    const made = await stickersPdf(plan, { stock: 'letter-3x10', from });
    if (!made.ok) throw new Error(JSON.stringify(made));
    const [first] = await textsOf(made.pdf);
    return { pages: made.pages, first };
  };
  const [whole, used] = [await at(1), await at(29)];
  expect(whole.pages).toBe(1);
  expect(used.pages).toBe(2);
  // Position 29 is the second of the last row: one pitch to the right, nine down.
  expect((used.first?.x ?? 0) - (whole.first?.x ?? 0)).toBeCloseTo(2.75 * 72, 2);
  expect((used.first?.y ?? 0) - (whole.first?.y ?? 0)).toBeCloseTo(-9 * 72, 2);
  for (const from of [0, 31, 1.5, NaN])
    expect(await stickersPdf(plan, { stock: 'letter-3x10', from })).toMatchObject({ fault: 'position' });
});

test('what a printer moves and stretches is taken back in the places, never in the stickers', () => {
  const stocks = stocksOf({
    'letter-3x10': { adjust: { right: '1/16', down: '1/8', across: { printed: '6 1/16', of: '6' } } },
  });
  const [plain, adjusted] = [stockNamed('letter-3x10'), stockNamed('letter-3x10', stocks)];
  if (plain === null || adjusted === null) throw new Error('letter-3x10 is built in');
  const shifted = placeOn(adjusted, 2);
  const { x, y } = placeOn(plain, 2);
  expect(shifted.x).toBeCloseTo((x * 6) / 6.0625 + 4.5, 6);
  expect(shifted.y).toBeCloseTo(y - 9, 6);
  expect(adjusted.label).toEqual(plain.label);
});

test('the calibration page says where the first sticker’s corner is and how long its lines are', async () => {
  const pdf = await calibrationPdf('letter-3x10');
  if (pdf === null) throw new Error('letter-3x10 is built in');
  const texts = (await textsOf(pdf)).map(({ text }) => text).join(' ');
  expect(texts).toContain('The cross is 3/16 in from the left, 1/2 in from the top.');
  expect(texts).toContain('Check lines: 6 in across, 6 in along.');
  expect(await calibrationPdf('no-such-stock')).toBeNull();
});
