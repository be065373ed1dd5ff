import PdfKit from 'pdfkit';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test } from 'vitest';
import { planFile } from '#core/plan/plan-file.ts';
import { stickersPdf } from '#labels/stickers-pdf.ts';
import { type Mark, marksOf } from './sticker-marks.ts';

const ROUNDS = 5;
const LETTER: [number, number] = [612, 792];
const fonts = join(import.meta.dirname, '../../labels/fonts');

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** 600 doors of 60 marks, half of them arched: 3 000 parts. */
const planned = planFile({
  format: 1,
  job: 'Bench',
  units: 'in',
  doors: Array.from({ length: 60 }, (_, k) => ({
    mark: `D${k}`,
    quantity: 10,
    opening: { width: `${14 + (k % 9)} ${(k % 15) + 1}/16`, height: `${24 + (k % 31)} ${(k % 63) + 1}/64` },
    ...(k % 2 === 0 ? { arch: { rise: '1 3/4', flat: '3/4' } } : {}),
  })),
});
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const plan = planned.value;

/** The same marks, given ready laid out, through pdfkit's own calls. */
async function byPdfKit(pages: readonly (readonly Mark[])[]): Promise<Buffer> {
  const document = new PdfKit({ size: LETTER, margin: 0, autoFirstPage: false });
  document.registerFont('R', join(fonts, 'AtkinsonHyperlegible-Regular.ttf'));
  document.registerFont('B', join(fonts, 'AtkinsonHyperlegible-Bold.ttf'));
  const chunks: Buffer[] = [];
  const done = new Promise<Buffer>((resolve) => {
    document.on('data', (chunk: Buffer) => chunks.push(chunk));
    document.on('end', () => resolve(Buffer.concat(chunks)));
  });
  for (const page of pages) {
    document.addPage();
    for (const mark of page) {
      if (mark.kind === 'text') {
        document
          .font(mark.bold ? 'B' : 'R')
          .fontSize(mark.size)
          .text(mark.text, mark.x, mark.y, { lineBreak: false, baseline: 'alphabetic' });
        continue;
      }
      for (const { op, at } of mark.steps) {
        const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = at;
        if (op === 'm') document.moveTo(a, b);
        else if (op === 'l') document.lineTo(a, b);
        else if (op === 'c') document.bezierCurveTo(a, b, c, d, e, f);
        else if (op === 're') document.rect(a, b, c, d);
        else document.closePath();
      }
      if (mark.paint === 'fill') document.fill();
      else {
        document.lineWidth(mark.width);
        if (mark.dash.length > 0) document.dash(mark.dash[0] ?? 1, { space: mark.dash[1] ?? 1 });
        else document.undash();
        document.stroke();
      }
    }
  }
  document.end();
  return done;
}

interface Run {
  readonly seconds: number;
  readonly megabytes: number;
}

/** Processor seconds of a run, and what it had taken of memory over what was there before, looked at when its PDF is whole. */
async function measured(run: () => Promise<unknown>): Promise<Run> {
  collect();
  const held = () => {
    const { heapUsed, external } = process.memoryUsage();
    return heapUsed + external;
  };
  const [before, began] = [held(), process.cpuUsage()];
  await run();
  const { user, system } = process.cpuUsage(began);
  return { seconds: (user + system) / 1e6, megabytes: (held() - before) / 1e6 };
}

const median = (values: readonly number[]) =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

test('3 000 stickers are made at least as fast as pdfkit makes the same marks ready laid out', async () => {
  const made = await stickersPdf(plan, { stock: 'letter-3x10' });
  if (!made.ok) throw new Error(JSON.stringify(made));
  expect(made.parts).toBe(3000);
  const marks = await marksOf(made.pdf);
  const [ours, theirs]: [Run[], Run[]] = [[], []];
  for (let k = 0; k < ROUNDS; k += 1) {
    ours.push(await measured(() => stickersPdf(plan, { stock: 'letter-3x10' })));
    theirs.push(await measured(() => byPdfKit(marks)));
  }
  const [own, other] = [ours, theirs].map((runs) => ({
    seconds: median(runs.map(({ seconds }) => seconds)),
    megabytes: median(runs.map(({ megabytes }) => megabytes)),
  }));
  if (own === undefined || other === undefined) throw new Error('two sides were measured');
  console.log(
    `stickers: ${Math.round(made.stickers / own.seconds)} a second, ${own.megabytes.toFixed(0)} MB; pdfkit ${Math.round(made.stickers / other.seconds)} a second, ${other.megabytes.toFixed(0)} MB; ${(other.seconds / own.seconds).toFixed(2)} times as fast`,
  );
  expect(other.seconds / own.seconds).toBeGreaterThanOrEqual(1);
}, 600_000);
