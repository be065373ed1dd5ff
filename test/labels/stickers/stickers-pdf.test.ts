import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { STOCKS } from '#labels/stickers/stock-in-points.ts';
import { stickersPdf } from '#labels/stickers/stickers-pdf.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };
import { inFull } from '../../samples.ts';

const planned = planFile(demo);
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const plan = planned.value;

async function made(options: Parameters<typeof stickersPdf>[1]) {
  const stickers = await stickersPdf(plan, options);
  if (!stickers.ok) throw new Error(JSON.stringify(stickers));
  return stickers;
}

/** The demo job's stickers on a stock, made once for all tests that look at them. */
const kept = new Map<string, ReturnType<typeof made>>();
function ofStock(stock: string): ReturnType<typeof made> {
  const stickers = kept.get(stock) ?? made({ stock });
  kept.set(stock, stickers);
  return stickers;
}

for (const stock of Object.keys(STOCKS))
  test(`every part of the demo job gets a sticker on ${stock}`, async () => {
    const first = await ofStock(stock);
    expect(first.parts).toBe(plan.doors.reduce((sum, door) => sum + door.parts.length, 0));
    expect(first.stickers).toBeGreaterThanOrEqual(first.parts);
    if (process.env.KEEP_PDF !== undefined) writeFileSync(`${process.env.KEEP_PDF}/${stock}.pdf`, first.pdf);
  }, 30_000);

test.each(inFull ? Object.keys(STOCKS) : ['a4-3x8'])(
  'the stickers of the demo job on %s are byte for byte the same twice',
  async (stock) => {
    const first = await ofStock(stock);
    const second = await made({ stock });
    expect(Buffer.from(first.pdf).equals(Buffer.from(second.pdf))).toBe(true);
  },
  30_000,
);

test('a Data Matrix leaves a narrow sticker room for all, where a Code 128 needs a second one', async () => {
  const bars = await ofStock('roll-2x1');
  const matrix = await made({ stock: 'roll-2x1', symbol: 'datamatrix' });
  if (process.env.KEEP_PDF !== undefined) writeFileSync(`${process.env.KEEP_PDF}/matrix.pdf`, matrix.pdf);
  expect(bars.doubled.length).toBeGreaterThan(matrix.doubled.length);
  expect(bars.stickers).toBeLessThanOrEqual(bars.parts * 2);
  expect(matrix.tooLarge).toEqual([]);
}, 30_000);

test('a stock too large for a part is told with the stocks that fit it', async () => {
  const { tooLarge } = await ofStock('roll-4x2');
  const stile = tooLarge.find(({ door, part }) => door === 'BENCH-1' && part === 'stile-left');
  expect(stile).toMatchObject({ state: 'none', fits: ['letter-3x10', 'roll-2x1', 'roll-3x1'] });
  expect(tooLarge.some(({ door, part }) => door === 'BENCH-1' && part === 'panel')).toBe(false);
}, 30_000);
