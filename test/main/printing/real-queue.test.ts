import { createCanvas, DOMMatrix, ImageData, Path2D } from '@napi-rs/canvas';
import { rmSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { say } from '#core/words/say.ts';
import { stickersPdf } from '#labels/stickers/stickers-pdf.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };
import { cups } from '#main/printing/cups.ts';
import { jobEnd } from '#main/printing/job-state.ts';
import { runHere } from '#main/printing/program.ts';
import { missingForPrinting, printedFiles, PrivateCups } from './private-cups.ts';

// The PDF reader draws with the page's own canvas classes, which plain Node has not.
Object.assign(globalThis, { DOMMatrix, ImageData, Path2D });
const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');

const missing = missingForPrinting();

if (missing !== null)
  test(`a real queue cannot be shown here: ${missing} is missing; without it the message says so`, async () => {
    const nowhere = runHere({ PATH: '/nonexistent' });
    const listed = await cups({ run: nowhere }).list();
    expect(listed).toMatchObject({ ok: false, code: 'printing-missing' });
    expect(say('print.printing-missing')).toContain('CUPS');
  });
else {
  let there: PrivateCups;
  const system = () =>
    cups({
      run: runHere(there.env),
      end: (job) => jobEnd(job, there.env),
      pace: 200,
      patience: { complaining: 3000, inAll: 60_000 },
    });
  const never = new AbortController().signal;

  beforeAll(async () => {
    there = await PrivateCups.start();
    there.add('Labels', 'pdf');
    there.add('Broken', 'broken');
    there.add('Gives-up', 'broken', 'abort-job');
    there.add('Off', 'pdf');
    there.stopPrinter('Off', 'out of labels');
    there.add('Kept', 'pdf');
    there.refuse('Kept', 'kept for letters');
  }, 60_000);
  afterAll(() => there.stop());

  async function sheet(): Promise<Uint8Array> {
    const planned = planFile(demo);
    if (!planned.ok) throw new Error('the demo job has faults');
    const codes = planned.value.doors[0]?.parts.map(({ code }) => code) ?? [];
    const made = await stickersPdf(planned.value, { stock: 'letter-3x10', codes });
    if (!made.ok) throw new Error(made.fault);
    return made.pdf;
  }

  test('the printers of a real scheduler are listed with their states and reasons', async () => {
    const listed = await system().list();
    expect(listed).toMatchObject({ ok: true });
    const by = new Map(listed.ok ? listed.printers.map((each) => [each.name, each]) : []);
    expect(by.get('Labels')).toMatchObject({ state: 'idle', accepting: true });
    expect(by.get('Off')).toMatchObject({ state: 'stopped', reason: 'out of labels' });
    expect(by.get('Kept')).toMatchObject({ accepting: false, reason: 'kept for letters' });
  });

  test('a real queue takes a sheet of stickers and prints it at 100 %', { timeout: 60_000 }, async () => {
    const pdf = await sheet();
    const before = printedFiles();
    const paper = { pdf, title: `Stickers ${process.pid}`, media: 'letter' as const };
    expect(await system().print('Labels', paper, never)).toEqual({ ok: true });
    const fresh = [...printedFiles()].filter(([path, bytes]) => before.get(path)?.equals(bytes) !== true);
    expect(fresh).toHaveLength(1);
    const [path, bytes] = fresh[0] ?? ['', Buffer.alloc(0)];
    rmSync(path, { force: true });
    const [sent, printed] = [await inkOf(pdf), await inkOf(new Uint8Array(bytes))];
    expect(printed.page.map(Math.round)).toEqual([612, 792]);
    expect(Math.abs(printed.left - sent.left)).toBeLessThan(0.3);
    expect(Math.abs(printed.right - sent.right)).toBeLessThan(0.3);
    expect(Math.abs(printed.top - sent.top)).toBeLessThan(0.3);
    expect(Math.abs(printed.bottom - sent.bottom)).toBeLessThan(0.3);
  });

  test.each([
    ['Broken', 'printer-stopped'],
    ['Gives-up', 'printer-fault'],
  ])(
    'a dead queue (%s) gives %s with the printer’s own words, and nothing waits in it',
    async (name, code) => {
      const outcome = await system().print(name, { pdf: await sheet(), title: 'Dead' }, never);
      expect(outcome).toEqual({ ok: false, code, figures: { printer: name, reason: 'The cable is out.' } });
      expect(there.waiting(name)).toBe('');
    },
    60_000,
  );

  test('a stopped queue, a refusing one and a missing one are told without waiting', async () => {
    const pdf = await sheet();
    const code = async (name: string) => {
      const outcome = await system().print(name, { pdf, title: 'None' }, never);
      return outcome.ok ? 'printed' : outcome.code;
    };
    expect(await code('Off')).toBe('printer-stopped');
    expect(await code('Kept')).toBe('printer-refuses');
    expect(await code('Attic')).toBe('printer-unknown');
  });
}

/** Where the ink of a PDF's first page begins and ends, in points from its left and top. */
async function inkOf(pdf: Uint8Array) {
  const document = await getDocument({ data: new Uint8Array(pdf), useSystemFonts: false, verbosity: 0 })
    .promise;
  const page = await document.getPage(1);
  const zoom = 4;
  const viewport = page.getViewport({ scale: zoom });
  const canvas = createCanvas(viewport.width, viewport.height);
  const context = canvas.getContext('2d');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  await page.render({ canvasContext: context as unknown as CanvasRenderingContext2D, viewport }).promise;
  const { data, width, height } = context.getImageData(0, 0, canvas.width, canvas.height);
  let [left, right, top, bottom] = [width, 0, height, 0];
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const at = (y * width + x) * 4;
      if ((data[at] ?? 255) > 128) continue;
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  const points = (value: number) => value / zoom;
  return {
    page: [points(width), points(height)],
    left: points(left),
    right: points(right),
    top: points(top),
    bottom: points(bottom),
  };
}
