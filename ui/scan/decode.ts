import wasmAddress from 'zxing-wasm/reader/zxing_reader.wasm?url';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

// Left to itself the decoder would fetch its program from elsewhere; ours comes from the hub.
prepareZXingModule({ overrides: { locateFile: () => wasmAddress } });

/** The text of the symbol in a picture, or null: one of the two that our stickers and papers carry, its check right. */
export async function decode(picture: ImageData): Promise<string | null> {
  const found = await readBarcodes(picture, {
    formats: ['Code128', 'DataMatrix'],
    tryHarder: true,
    maxNumberOfSymbols: 1,
  });
  const [first] = found;
  return first?.isValid === true ? first.text : null;
}
