import { createCanvas, DOMMatrix, ImageData, Path2D } from '@napi-rs/canvas';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
// The PDF reader draws with the page's own canvas classes, which plain Node has not.
Object.assign(globalThis, { DOMMatrix, ImageData, Path2D });
const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');

await prepareZXingModule({ overrides: { wasmBinary: wasm.buffer }, fireImmediately: true });

/** The pages of a PDF as PNGs at a resolution. */
export async function rasterise(pdf: Uint8Array, dpi: number): Promise<Buffer[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const pages: Buffer[] = [];
  for (let k = 1; k <= document.numPages; k += 1) {
    const page = await document.getPage(k);
    const viewport = page.getViewport({ scale: dpi / 72 });
    const canvas = createCanvas(Math.round(viewport.width), Math.round(viewport.height));
    const context = canvas.getContext('2d');
    context.fillStyle = '#fff';
    context.fillRect(0, 0, canvas.width, canvas.height);
    await page.render({ canvasContext: context as unknown as CanvasRenderingContext2D, viewport }).promise;
    pages.push(canvas.toBuffer('image/png'));
  }
  return pages;
}

/** Every code that a scanner finds on a sheet of stickers, rasterised at a resolution. */
export async function codesOn(pdf: Uint8Array, dpi = 300): Promise<ReadonlySet<string>> {
  const found = new Set<string>();
  for (const page of await rasterise(pdf, dpi))
    for (const { text, isValid } of await readBarcodes(new Uint8Array(page), {
      formats: ['Code128', 'DataMatrix'],
      tryHarder: true,
      maxNumberOfSymbols: 60,
    }))
      if (isValid) found.add(text);
  return found;
}
