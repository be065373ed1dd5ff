import { parseText } from '../log-line.ts';
import { INSTANT, UUID } from '../mark-entry.ts';
import type { TakeEntry } from '../read-log.ts';
import {
  AT,
  type Batch,
  BY,
  CODE,
  DOOR,
  END,
  FIELDS,
  JOB,
  MARK,
  NONE,
  PART,
  RECEIVED,
  STAGE,
  STATION,
} from './batch.ts';

/** Takes the entries out of batches again, the same as if they had been read here. */
export class Unpacker {
  #texts: string[] = [];

  unpack(batch: Batch, each: TakeEntry): void {
    const { count, seqs, places, fields } = batch;
    if (batch.anew) this.#texts = [];
    for (const text of batch.texts) this.#texts.push(text);
    const texts = this.#texts;
    const ids = viewed(batch.ids);
    const json = viewed(batch.json);
    const instants = inSteps(batch.instants, INSTANT);
    let marks = 0;
    let begun = 0;
    for (let k = 0; k < count; k += 1) {
      const row = k * FIELDS;
      const seq = seqs[k] ?? 0;
      const place = places[k] ?? 0;
      const job = fields[row + JOB] ?? NONE;
      if (job === NONE) {
        const end = fields[row + END] ?? 0;
        each({ seq, entry: parseText(json, begun, end) }, place);
        begun = end;
        continue;
      }
      const text = (column: number) => texts[fields[row + column] ?? 0] ?? '';
      const id = ids.toString('latin1', marks * UUID, (marks + 1) * UUID);
      marks += 1;
      const [code, station, stage, mark] = [text(CODE), text(STATION), text(STAGE), text(MARK)];
      const at = instants[fields[row + AT] ?? 0] ?? '';
      const entry = {
        kind: 'mark',
        mark: {
          received: instants[fields[row + RECEIVED] ?? 0] ?? '',
          job: texts[job] ?? '',
          door: text(DOOR),
          part: text(PART),
          mark:
            fields[row + BY] === NONE
              ? { id, code, station, stage, mark, at }
              : { id, code, station, stage, mark, by: text(BY), at },
        },
      };
      each({ seq, entry }, place);
    }
  }
}

function viewed(bytes: Uint8Array<ArrayBuffer>): Buffer {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
}

/** ASCII texts of one length that stand one behind the other. */
function inSteps(bytes: Uint8Array<ArrayBuffer>, length: number): string[] {
  const buffer = viewed(bytes);
  return Array.from({ length: bytes.length / length }, (_, k) =>
    buffer.toString('latin1', k * length, (k + 1) * length),
  );
}
