import wasmAddress from 'zxing-wasm/reader/zxing_reader.wasm?url';
import { prepareZXingModule, readBarcodes, type ReadInputBarcodeFormat } from 'zxing-wasm/reader';

// Left to itself the decoder would fetch its program from elsewhere; ours comes from the hub.
prepareZXingModule({ overrides: { locateFile: () => wasmAddress } });

/** What may be looked for: the two symbols that our stickers and papers carry, or the one that the office shows an address by. */
export const SYMBOLS = {
  codes: ['Code128', 'DataMatrix'],
  address: ['QRCode'],
} as const satisfies Readonly<Record<string, ReadonlyArray<ReadInputBarcodeFormat>>>;
export type Symbols = keyof typeof SYMBOLS;

/** The text of the symbol in a picture, or null: one of those that are looked for, its check right. */
export async function decode(picture: ImageData, symbols: Symbols): Promise<string | null> {
  const found = await readBarcodes(picture, {
    formats: [...SYMBOLS[symbols]],
    tryHarder: true,
    maxNumberOfSymbols: 1,
  });
  const [first] = found;
  return first?.isValid === true ? first.text : null;
}
