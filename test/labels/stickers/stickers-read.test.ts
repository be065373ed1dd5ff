import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { stickersPdf } from '#labels/stickers/stickers-pdf.ts';
import type { SymbolKind } from '#labels/pdf/symbol.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };
import { greyPages } from '../read-pdf.ts';
import { blurred, cropped, turned, zxing } from './scan.ts';
import { boxTroubles, readingOf, stickersOf, stockOf, textTroubles } from './sticker-checks.ts';

const planned = planFile(demo);
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const plan = planned.value;
/** One of every kind of part. */
const KINDS = ['ARCH-L-1 stile-left', 'ARCH-L-1 rail-top', 'LOCKER-1 rail-mid-1', 'LOCKER-1 panel-1'];
const some = plan.doors.flatMap((door) =>
  door.parts.flatMap((part) => (KINDS.includes(`${door.door} ${part.part}`) ? [{ door, part }] : [])),
);

for (const [name, symbol] of [
  ['letter-3x10', 'code128'],
  ['roll-2x1', 'datamatrix'],
  ['roll-3x1', 'code128'],
] as const satisfies readonly (readonly [string, SymbolKind])[])
  test(`a door’s stickers on ${name} read as the plan says, fit, and scan upright, turned and smeared (${symbol})`, async () => {
    const stock = stockOf(name);
    const made = await stickersPdf(plan, { stock: name, symbol, codes: some.map(({ part }) => part.code) });
    if (!made.ok) throw new Error(JSON.stringify(made));
    const found = await stickersOf(made.pdf, stock, made.stickers);
    expect(found.flatMap((each) => boxTroubles(each, stock))).toEqual([]);
    const dot = 72 / stock.dpi;
    const pages = [];
    for await (const page of greyPages(made.pdf, stock.dpi)) pages.push(page);
    const readings = found.map(({ texts }) => readingOf(texts));
    for (const { door, part } of some) {
      const spaced = `${part.code.slice(0, 5)} ${part.code.slice(5)}`;
      const own = readings.filter((each) => each.includes(spaced));
      expect(own.length).toBeGreaterThan(0);
      expect(textTroubles(plan, door, part, own)).toEqual([]);
    }
    for (const [k, { page, x, y, texts }] of found.entries()) {
      const sheet = pages[page - 1];
      if (sheet === undefined) throw new Error('every page is rasterised');
      const picture = cropped(
        sheet,
        Math.round(x / dot),
        Math.round((stock.page.height - y - stock.label.height) / dot),
        Math.round(stock.label.width / dot),
        Math.round(stock.label.height / dot),
      );
      const code = some.find(({ part }) =>
        readingOf(texts).includes(`${part.code.slice(0, 5)} ${part.code.slice(5)}`),
      );
      const way = [picture, turned(picture), blurred(picture)][k % 3] ?? picture;
      expect(await zxing(way, symbol)).toEqual([code?.part.code]);
    }
  }, 180_000);
