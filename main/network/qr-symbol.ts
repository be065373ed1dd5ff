import bwipjs from 'bwip-js/node';

const MOST_KEPT = 16;
const kept = new Map<string, string[]>();

/** The symbol of an address of the hub. Those asked for last are kept, as the office looks every few seconds. */
export function addressSymbol(address: string): string[] {
  const symbol = kept.get(address) ?? qrSymbol(address);
  kept.delete(address);
  kept.set(address, symbol);
  for (const oldest of kept.keys()) if (kept.size > MOST_KEPT) kept.delete(oldest);
  return [...symbol];
}

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
