import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { stickersPdf } from '#labels/stickers/stickers-pdf.ts';
import { dotsPerModule, symbolOf } from '#labels/pdf/symbol.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };
import { checkValue, valuesOf } from './code-128-table.ts';
import { symbolsOf } from '../read-operators.ts';

const barsOf = (text: string) =>
  symbolOf('code128', text).bars.map(({ x, width }) => [x, x + width] as const);

test('ISO/IEC 15417, its worked example (looked up): HI345678 has the check value 67 from Start A', () => {
  // Looked up: Start A, H, I, Code C, 34, 56, 78 is 1406, and 1406 mod 103 = 67.
  expect(checkValue([103, 40, 41, 99, 34, 56, 78])).toBe(67);
});

test('the bars of HI345678 are those of the worked example, its check value reckoned by the rule where they begin with Start B', () => {
  // The patterns of the bars are from memory. Reckoned by the rule: Start B counts one more than Start A, so 68.
  const [start, ...mixed] = valuesOf(barsOf('HI345678'));
  expect(mixed.slice(0, -1)).toEqual([40, 41, 99, 34, 56, 78]);
  expect(mixed.at(-1)).toBe(start === 103 ? 67 : 68);
});

test('the check value of abcdef in set B is the one reckoned by the rule of ISO/IEC 15417', () => {
  // Reckoned by the rule, by hand: 104 + 1·65 + 2·66 + 3·67 + 4·68 + 5·69 + 6·70 = 1539, and 1539 mod 103 = 97.
  const plain = valuesOf(barsOf('abcdef'));
  expect(plain).toEqual([104, 65, 66, 67, 68, 69, 70, 97]);
  expect(checkValue(plain.slice(0, -1))).toBe(97);
});

for (const stock of ['letter-3x10', 'roll-2x1'])
  test(`every Code 128 that is drawn on ${stock} has the check value reckoned by the rule, in bars of whole dots with white edges of 10 modules`, async () => {
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
