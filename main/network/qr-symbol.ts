import bwipjs from 'bwip-js/node';

/** A text as a QR code (ISO/IEC 18004) of medium error correction: a text of 0 and 1 a row, the top row first, no quiet zone. */
export function qrSymbol(text: string): string[] {
  const { pixs, pixx } = bwipjs.raw('qrcode', text, 'eclevel=M')[0] as {
    readonly pixs?: readonly number[];
    readonly pixx?: number;
  };
  if (pixs === undefined || pixx === undefined) throw new Error('no QR code came of an address');
  return Array.from({ length: pixs.length / pixx }, (_, row) =>
    pixs.slice(row * pixx, (row + 1) * pixx).join(''),
  );
}
