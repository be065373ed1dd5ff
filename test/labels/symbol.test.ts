import { expect, test } from 'vitest';
import { planFile } from '#core/plan/plan-file.ts';
import { stickersPdf } from '#labels/stickers-pdf.ts';
import { dotsPerModule, symbolOf } from '#labels/symbol.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };
import { checkValue, valuesOf } from './code-128-table.ts';
import { symbolsOf } from './read-operators.ts';

const barsOf = (text: string) =>
  symbolOf('code128', text).bars.map(({ x, width }) => [x, x + width] as const);

test('the check value is the one of ISO/IEC 15417’s rule, in both worked examples', () => {
  // "HI345678": Start A or B, H, I, Code C, 34, 56, 78. With Start A 1406 mod 103 = 67; Start B is one more, 68.
  const [start, ...mixed] = valuesOf(barsOf('HI345678'));
  expect(mixed.slice(0, -1)).toEqual([40, 41, 99, 34, 56, 78]);
  expect(checkValue([103, ...mixed.slice(0, -1)])).toBe(67);
  expect(mixed.at(-1)).toBe(start === 103 ? 67 : 68);
  // "abcdef" in set B: 1539 mod 103 = 97.
  const plain = valuesOf(barsOf('abcdef'));
  expect(plain).toEqual([104, 65, 66, 67, 68, 69, 70, 97]);
  expect(checkValue(plain.slice(0, -1))).toBe(97);
});

for (const stock of ['letter-3x10', 'roll-2x1'])
  test(`every Code 128 that is drawn on ${stock} has its check value, in bars of whole dots with white edges of 10 modules`, async () => {
    const planned = planFile(demo);
    if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
    const made = await stickersPdf(planned.value, { stock });
    if (!made.ok) throw new Error(JSON.stringify(made));
    const symbols = await symbolsOf(made.pdf);
    expect(symbols.length).toBe(made.stickers);
    const dpi = stock === 'letter-3x10' ? 600 : 203;
    const dot = 72 / dpi;
    const module = dotsPerModule('code128', dpi);
    for (const { bars, left } of symbols) {
      // Each bar is drawn 0.02 dot smaller on each side: added, its edges stand on the dots.
      const dots = bars.map(([a, b]) => [a / dot - 0.02, b / dot + 0.02] as const);
      for (const edge of dots.flat()) expect(Math.abs(edge - Math.round(edge))).toBeLessThan(0.002);
      const first = Math.round(dots[0]?.[0] ?? 0);
      const modules = dots.map(([a, b]) => {
        const [from, to] = [(Math.round(a) - first) / module, (Math.round(b) - first) / module];
        expect(Number.isInteger(from) && Number.isInteger(to)).toBe(true);
        return [from, to] as const;
      });
      const values = valuesOf(modules);
      expect(values.at(-1)).toBe(checkValue(values.slice(0, -1)));
      const column = stock === 'letter-3x10' ? (left - 0.1875 * 72) % (2.75 * 72) : left;
      expect(column).toBeGreaterThanOrEqual(10 * module * dot - dot / 2);
    }
  }, 30_000);
