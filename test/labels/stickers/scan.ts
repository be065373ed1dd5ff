import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { type GreyPage, pngPages } from '../read-pdf.ts';

const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
await prepareZXingModule({ overrides: { wasmBinary: wasm.buffer }, fireImmediately: true });

/** A piece of a page, in dots from its upper left corner. */
export function cropped(page: GreyPage, left: number, top: number, width: number, height: number): GreyPage {
  const grey = new Uint8Array(width * height).fill(255);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const [px, py] = [left + x, top + y];
      if (px >= 0 && py >= 0 && px < page.width && py < page.height)
        grey[y * width + x] = page.grey[py * page.width + px] ?? 255;
    }
  return { width, height, grey };
}

/** Turned by a quarter. */
export function turned({ width, height, grey }: GreyPage): GreyPage {
  const out = new Uint8Array(grey.length);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) out[x * height + (height - 1 - y)] = grey[y * width + x] ?? 255;
  return { width: height, height: width, grey: out };
}

/** Smeared as by a tired printer or a lens: a Gaussian whose standard deviation is one dot. */
export function blurred({ width, height, grey }: GreyPage): GreyPage {
  const kernel = [-3, -2, -1, 0, 1, 2, 3].map((k) => Math.exp((-k * k) / 2));
  const total = kernel.reduce((a, b) => a + b, 0);
  const pass = (from: Uint8Array, step: number, along: number, count: number) => {
    const out = new Uint8Array(from.length);
    for (let n = 0; n < from.length; n += 1) {
      const at = Math.floor(n / step) % count;
      let value = 0;
      for (const [k, weight] of kernel.entries()) {
        const to = Math.max(0, Math.min(along - 1, at + k - 3));
        value += weight * (from[n + (to - at) * step] ?? 255);
      }
      out[n] = Math.round(value / total);
    }
    return out;
  };
  return { width, height, grey: pass(pass(grey, 1, width, width), width, height, height) };
}

/** What zxing reads in a picture. */
export async function zxing(
  { width, height, grey }: GreyPage,
  kind: 'code128' | 'datamatrix',
): Promise<string[]> {
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (const [k, value] of grey.entries()) data[k * 4] = data[k * 4 + 1] = data[k * 4 + 2] = value;
  const found = await readBarcodes(
    { data, width, height, colorSpace: 'srgb' },
    {
      formats: [kind === 'code128' ? 'Code128' : 'DataMatrix'],
      tryHarder: true,
      maxNumberOfSymbols: 2,
    },
  );
  return found.filter(({ isValid }) => isValid).map(({ text }) => text);
}

/** Every code that a scanner finds on a sheet of stickers, rasterised at a resolution. */
export async function codesOn(pdf: Uint8Array, dpi = 300): Promise<ReadonlySet<string>> {
  const found = new Set<string>();
  for (const page of await pngPages(pdf, dpi))
    for (const { text, isValid } of await readBarcodes(new Uint8Array(page), {
      formats: ['Code128', 'DataMatrix'],
      tryHarder: true,
      maxNumberOfSymbols: 60,
    }))
      if (isValid) found.add(text);
  return found;
}
