import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';
import { STOCKS } from '#labels/stickers/stock-in-points.ts';
import { stickersPdf } from '#labels/stickers/stickers-pdf.ts';
import type { SymbolKind } from '#labels/pdf/symbol.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };
import { generatedPlans } from '../labels/stickers/generated-jobs.ts';
import { type GreyPage, greyPages } from '../labels/read-pdf.ts';
import { blurred, cropped, turned, zxing } from '../labels/stickers/scan.ts';
import {
  boxTroubles,
  readingOf,
  stickersOf,
  stockOf,
  textTroubles,
} from '../labels/stickers/sticker-checks.ts';

const seed = Number(process.env.SEED ?? Date.now() % 1_000_000);
const JOBS = Number(process.env.JOBS ?? 4);
const folder = mkdtempSync(join(tmpdir(), 'shoulderline-stickers-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const planned = planFile(demo);
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const jobs: readonly (readonly [string, Plan])[] = [
  ['the demo job', planned.value],
  ...generatedPlans(seed, JOBS).map((plan, k) => [`job ${k + 1} of seed ${seed}`, plan] as const),
];
/** A part of the proof alone: names of stocks, kinds of symbols and numbers of jobs (0 is the demo job), parted by commas. */
const chosen = (variable: string, all: readonly string[]) => {
  const only = process.env[variable]?.split(',');
  const unknown = only?.filter((each) => !all.includes(each)) ?? [];
  if (unknown.length > 0)
    throw new Error(`${variable}: there is no ${unknown.join(', ')}; ${all.join(', ')}`);
  return only ?? all;
};
const stocks = chosen('STOCKS', Object.keys(STOCKS));
const kinds = chosen('SYMBOLS', ['code128', 'datamatrix']) as readonly SymbolKind[];
const numbers = chosen(
  'ONLY',
  jobs.map((_, k) => String(k)),
);
console.log(`stickers: seed ${seed}, ${JOBS} generated jobs`);

const WAYS = ['upright', 'turned', 'smeared'] as const;

/** The second decoder, a program of its own: zbar for bars, libdmtx for matrices. It reads pictures from files, each to a text. */
function otherDecoder(kind: SymbolKind, pictures: readonly GreyPage[]): string[] {
  const own = mkdtempSync(join(folder, 'pictures-'));
  mkdirSync(own, { recursive: true });
  const files = pictures.map(({ width, height, grey }, k) => {
    const file = join(own, `${String(k).padStart(5, '0')}.pgm`);
    writeFileSync(file, Buffer.concat([Buffer.from(`P5\n${width} ${height}\n255\n`), Buffer.from(grey)]));
    return file;
  });
  const texts =
    kind === 'code128'
      ? files.flatMap((file) => run('zbarimg', ['-q', '--raw', '-Sdisable', '-Scode128.enable', file]))
      : files.flatMap((file) => run('dmtxread', ['-n', '-N1', '-m2000', file]));
  rmSync(own, { recursive: true, force: true });
  return texts;
}

function run(program: string, given: readonly string[]): string[] {
  const { stdout, error } = spawnSync(program, given, { encoding: 'utf8' });
  if (error !== undefined)
    throw new Error(`${program} is needed (Debian: zbar-tools, dmtx-utils): ${error.message}`);
  const [first] = stdout.split('\n').filter((each) => each !== '');
  return [first ?? 'nothing read'];
}

for (const [name, plan] of jobs.filter((_, k) => numbers.includes(String(k))))
  for (const stockName of stocks)
    for (const kind of kinds)
      test(`${name} on ${stockName} with ${kind}: reads as the plan says, fits, and two decoders read every sticker every way`, async () => {
        const stock = stockOf(stockName);
        const made = await stickersPdf(plan, { stock: stockName, symbol: kind });
        if (!made.ok) throw new Error(JSON.stringify(made));
        const again = await stickersPdf(plan, { stock: stockName, symbol: kind });
        expect(again.ok && Buffer.from(again.pdf).equals(Buffer.from(made.pdf))).toBe(true);
        const found = await stickersOf(made.pdf, stock, made.stickers);
        expect(found.flatMap((each) => boxTroubles(each, stock))).toEqual([]);
        const readings = found.map(({ texts }) => readingOf(texts));
        const codes: string[] = [];
        for (const door of plan.doors)
          for (const part of door.parts) {
            const spaced = `${part.code.slice(0, 5)} ${part.code.slice(5)}`;
            const own = readings.filter((each) => each.includes(spaced));
            expect(own.length).toBeGreaterThan(0);
            expect(textTroubles(plan, door, part, own)).toEqual([]);
            codes.push(...own.map(() => part.code));
          }
        expect(codes.length).toBe(made.stickers);
        const dot = 72 / stock.dpi;
        const at = (points: number) => Math.round(points / dot);
        const pictures: GreyPage[] = [];
        let k = 0;
        let sheet = 0;
        for await (const page of greyPages(made.pdf, stock.dpi)) {
          sheet += 1;
          for (; found[k]?.page === sheet; k += 1) {
            const { x = 0, y = 0 } = found[k] ?? {};
            const { width, height } = stock.label;
            pictures.push(cropped(page, at(x), at(stock.page.height - y - height), at(width), at(height)));
          }
        }
        expect(pictures.length).toBe(made.stickers);
        for (const way of WAYS) {
          const seen = pictures.map((each) =>
            way === 'turned' ? turned(each) : way === 'smeared' ? blurred(each) : each,
          );
          const first: string[] = [];
          for (const each of seen) first.push((await zxing(each, kind)).join(' and ') || 'nothing read');
          expect(first).toEqual(codes);
          // The second decoder looks at the symbol's neighbourhood, as a scanner pointed at it does.
          const near = seen.map((each, n) => {
            const box = found[n]?.symbol;
            const { x = 0, y = 0 } = found[n] ?? {};
            if (box === undefined || way === 'turned') return each;
            const edge = at(5);
            return cropped(
              each,
              at(box.left - x) - edge,
              at(stock.label.height - (box.top - y)) - edge,
              at(box.right - box.left) + 2 * edge,
              at(box.top - box.bottom) + 2 * edge,
            );
          });
          expect(otherDecoder(kind, near)).toEqual(codes);
        }
      });
