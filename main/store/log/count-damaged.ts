import { setImmediate as pause } from 'node:timers/promises';
import type { FilePort } from '../files/file-port.ts';
import { slices } from '../files/packed.ts';
import { isWhole } from './log-line.ts';

/**
 * How many lines of a log are damaged, up to a line's end: what a snapshot saves the start from reading is looked through
 * afterwards, a piece at a time with others in between. Null when it is no longer `wanted`.
 */
export async function countDamaged(
  port: FilePort,
  path: string,
  end: number,
  wanted: () => boolean,
): Promise<number | null> {
  let damaged = 0;
  let rest = Buffer.alloc(0);
  let begun = 0;
  for await (const slice of slices(port, path)) {
    const piece = Buffer.concat([rest, slice.subarray(0, end - begun)]);
    begun += slice.length;
    let start = 0;
    for (let stop = piece.indexOf(10); stop >= 0; stop = piece.indexOf(10, start)) {
      if (!isWhole(piece, start, stop)) damaged += 1;
      start = stop + 1;
    }
    rest = piece.subarray(start);
    await pause();
    if (!wanted()) return null;
    if (begun >= end) break;
  }
  return rest.length > 0 ? damaged + 1 : damaged;
}
