import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { planFile } from '#core/plan/plan-file.ts';
import { STOCKS } from '#labels/stock.ts';
import { stickersPdf } from '#labels/stickers-pdf.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };

const planned = planFile(demo);
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const plan = planned.value;

async function made(options: Parameters<typeof stickersPdf>[1]) {
  const stickers = await stickersPdf(plan, options);
  if (!stickers.ok) throw new Error(JSON.stringify(stickers));
  return stickers;
}

for (const stock of Object.keys(STOCKS))
  test(`every part of the demo job gets a sticker on ${stock}, byte for byte the same twice`, async () => {
    const first = await made({ stock });
    const second = await made({ stock });
    expect(first.parts).toBe(plan.doors.reduce((sum, door) => sum + door.parts.length, 0));
    expect(first.stickers).toBeGreaterThanOrEqual(first.parts);
    expect(Buffer.from(first.pdf).equals(Buffer.from(second.pdf))).toBe(true);
    if (process.env.KEEP_PDF !== undefined) writeFileSync(`${process.env.KEEP_PDF}/${stock}.pdf`, first.pdf);
  }, 30_000);

test('a Data Matrix leaves a narrow sticker room for all, where a Code 128 needs a second one', async () => {
  const bars = await made({ stock: 'roll-2x1' });
  const matrix = await made({ stock: 'roll-2x1', symbol: 'datamatrix' });
  if (process.env.KEEP_PDF !== undefined) writeFileSync(`${process.env.KEEP_PDF}/matrix.pdf`, matrix.pdf);
  expect(bars.doubled.length).toBeGreaterThan(matrix.doubled.length);
  expect(bars.stickers).toBeLessThanOrEqual(bars.parts * 2);
}, 30_000);

test('a stock too large for a part is told with the stocks that fit it', async () => {
  const { tooLarge } = await made({ stock: 'roll-4x2' });
  const stile = tooLarge.find(({ door, part }) => door === 'BENCH-1' && part === 'stile-left');
  expect(stile).toMatchObject({ state: 'none', fits: ['letter-3x10', 'roll-2x1', 'roll-3x1'] });
  expect(tooLarge.some(({ door, part }) => door === 'BENCH-1' && part === 'panel')).toBe(false);
  const small = await made({ stock: 'roll-2x1', symbol: 'datamatrix' });
  expect(small.tooLarge).toEqual([]);
}, 30_000);
