import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
const DOTS = 4;
const QUIET = 4;

/** What a decoder reads of a symbol, four dots a module, with its quiet zone. */
export async function readQr(rows: readonly string[]): Promise<string | undefined> {
  await prepareZXingModule({ overrides: { wasmBinary: wasm.buffer }, fireImmediately: true });
  const width = (rows.length + 2 * QUIET) * DOTS;
  const data = new Uint8ClampedArray(width * width * 4).fill(255);
  for (let y = 0; y < width; y += 1)
    for (let x = 0; x < width; x += 1)
      if (rows[Math.floor(y / DOTS) - QUIET]?.[Math.floor(x / DOTS) - QUIET] === '1')
        data.fill(0, (y * width + x) * 4, (y * width + x) * 4 + 3);
  const [found] = await readBarcodes(
    { data, width, height: width, colorSpace: 'srgb' },
    { formats: ['QRCode'], tryHarder: true },
  );
  return found?.isValid === true ? found.text : undefined;
}
