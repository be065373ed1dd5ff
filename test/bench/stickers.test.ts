import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test } from 'vitest';
import { build } from 'vite';
import { stickersPdf } from '#labels/stickers/stickers-pdf.ts';
import { byPdfKit } from './by-pdfkit.ts';
import { strokesOf } from './sticker-strokes.ts';
import { plan } from './sticker-plan.ts';

const ROUNDS = 5;
const root = join(import.meta.dirname, '../..');
const fonts = join(root, 'labels/fonts');

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

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

test('3 000 stickers are made at least as fast as pdfkit makes the same strokes ready laid out', async () => {
  const made = await stickersPdf(plan, { stock: 'letter-3x10' });
  if (!made.ok) throw new Error(JSON.stringify(made));
  expect(made.parts).toBe(3000);
  const strokes = await strokesOf(made.pdf);
  const [ours, theirs]: [Run[], Run[]] = [[], []];
  for (let k = 0; k < ROUNDS; k += 1) {
    ours.push(await measured(() => stickersPdf(plan, { stock: 'letter-3x10' })));
    theirs.push(await measured(() => byPdfKit(strokes, fonts)));
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

/** A run in a process of its own: the most memory that it ever held, in megabytes. */
function peak(how: 'ours' | 'pdfkit', doors: string, strokes: string): number {
  const told = execFileSync(
    process.execPath,
    [join(root, 'dist/bench/sticker-run.js'), how, doors, strokes, fonts],
    {
      encoding: 'utf8',
    },
  );
  return Number(told) / 1000;
}

test('3 000 stickers take no more memory than pdfkit takes for the same strokes', async () => {
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    build: {
      ssr: 'test/bench/sticker-run.ts',
      outDir: 'dist/bench',
      emptyOutDir: true,
      rolldownOptions: { output: { entryFileNames: '[name].js' } },
    },
  });
  const made = await stickersPdf(plan, { stock: 'letter-3x10' });
  if (!made.ok) throw new Error(JSON.stringify(made));
  // In small files, so that neither side is charged for the text of what it is given.
  const filed = (name: string, pieces: readonly unknown[]) => {
    const folder = join(root, 'dist/bench', name);
    mkdirSync(folder);
    for (const [k, piece] of pieces.entries())
      writeFileSync(join(folder, `${k}.json`), JSON.stringify(piece));
    return folder;
  };
  const strokes = filed('strokes', await strokesOf(made.pdf));
  const doors = filed('doors', plan.doors);
  const rounds = Array.from({ length: ROUNDS }, () => ({
    ours: peak('ours', doors, strokes),
    theirs: peak('pdfkit', doors, strokes),
  }));
  const [own, other] = [median(rounds.map(({ ours }) => ours)), median(rounds.map(({ theirs }) => theirs))];
  console.log(`peak memory: stickers ${own.toFixed(0)} MB, pdfkit ${other.toFixed(0)} MB`);
  expect(own).toBeLessThanOrEqual(other);
}, 600_000);
