import { z } from 'zod';
import { addressOf } from './address.ts';
import { patienceFor } from './patience.ts';

/** Where the stickers of a job are opened as a PDF, all or those of some codes, from a position of the sheet on. */
export function stickersAddress(job: string, stock: string, from: number, codes?: readonly string[]): string {
  return addressOf('GET /jobs/:id/stickers.pdf', {
    params: { id: job },
    query: { stock, from: String(from), codes: codes?.join(',') },
  });
}

/** Where a paper of a job is opened as a PDF. */
export function papersAddress(job: string, kind: string, paper: string): string {
  return addressOf('GET /jobs/:id/papers.pdf', { params: { id: job }, query: { kind, paper } });
}

/** Where the page to hold against a stock is opened. */
export function calibrationAddress(stock: string): string {
  return addressOf('GET /stocks/:stock/calibration.pdf', { params: { stock } });
}

/** What stands at the head of a sheet of stickers. */
const laidOut = z.object({ stickers: z.number() });

/** How many stickers stand at such an address: a part may take two. Null while the hub does not tell. */
export async function stickersAt(address: string): Promise<number | null> {
  try {
    const signal = AbortSignal.timeout(patienceFor('GET /jobs/:id/stickers.pdf'));
    const response = await fetch(address, { signal });
    await response.body?.cancel();
    return laidOut.parse(JSON.parse(response.headers.get('x-stickers') ?? 'null')).stickers;
  } catch {
    return null;
  }
}
