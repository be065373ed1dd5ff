import { createHash } from 'node:crypto';
import { crc32, gzipSync } from 'node:zlib';
import type { Plan } from '#core/plan/plan.ts';
import { stickerSays } from '#core/stickers/sticker-says.ts';
import {
  CODE_LENGTH,
  type DoorShape,
  type IndexHead,
  keyOf,
  SAYS_LENGTH,
  tableBytes,
  tablesIn,
} from './job-index.ts';
import { linesOfPlan } from './plan-lines.ts';

/** A plan in bytes, small enough to go from thread to thread at once: as its file keeps it, and its index. */
export interface PlanBytes {
  readonly head: IndexHead;
  /** The tables of the index. */
  readonly tables: ArrayBuffer;
  /** Its lines, each packed by itself, so that one can be read without the others; all of them are one gzip file (RFC 1952, section 2.2). */
  readonly lines: ArrayBuffer;
}

/** Packs the lines of a job's plan and makes its index. */
export function planBytes(plan: Plan, due: unknown): PlanBytes {
  const { id, job, units, doors } = plan;
  const pieces: Buffer[] = [];
  const kinds: {
    readonly at: number;
    readonly length: number;
    readonly sum: number;
    readonly door: number;
  }[] = [];
  const kindOf = new Uint32Array(doors.length);
  let bytes = 0;
  for (const line of linesOfPlan(plan)) {
    const packed = gzipSync(`${JSON.stringify(line)}\n`, { level: 1 });
    if ('alike' in line) {
      const { runs } = line.alike;
      for (const [at, , many] of runs) kindOf.fill(kinds.length, at, at + many);
      kinds.push({ at: bytes, length: packed.length, sum: crc32(packed), door: runs[0]?.[0] ?? 0 });
    }
    pieces.push(packed);
    bytes += packed.length;
  }
  const shapes = new Map<string, number>();
  const shapeList: DoorShape[] = [];
  const shapeOf = kinds.map(({ door }) => {
    const shape = shapeOfDoor(doors[door]);
    const text = JSON.stringify(shape);
    const known = shapes.get(text) ?? shapeList.push(shape) - 1;
    shapes.set(text, known);
    return known;
  });
  const marks = [...new Set(doors.map(({ mark }) => mark))];
  const markOf = new Map(marks.map((mark, k) => [mark, k]));
  const head: IndexHead = {
    id,
    job,
    ...(typeof due === 'string' ? { due } : {}),
    units,
    doors: doors.length,
    parts: doors.reduce((sum, { parts }) => sum + parts.length, 0),
    kinds: kinds.length,
    sums: kinds.reduce((sum, { door }) => sum + (doors[door]?.parts.length ?? 0), 0),
    marks,
    shapes: shapeList,
  };
  const buffer = new ArrayBuffer(tableBytes(head));
  const tables = tablesIn(buffer, head);
  let place = 0;
  const coded: { readonly key: number; readonly place: number }[] = [];
  for (const [at, { door, mark, parts }] of doors.entries()) {
    tables.markOf[at] = markOf.get(mark) ?? 0;
    tables.numberOf[at] = Number(door.slice(mark.length + 1));
    tables.firstPart[at] = place;
    for (const { code } of parts) {
      if (
        tables.codes.write(code, place * CODE_LENGTH, 'latin1') !== CODE_LENGTH ||
        code.length !== CODE_LENGTH
      )
        throw new Error(`a code has ${CODE_LENGTH} characters`);
      coded.push({ key: keyOf(code), place });
      place += 1;
    }
  }
  tables.firstPart[doors.length] = place;
  tables.kindOf.set(kindOf);
  for (const [k, each] of coded.sort((a, b) => a.key - b.key).entries()) {
    tables.keys[k] = each.key;
    tables.places[k] = each.place;
  }
  let sum = 0;
  for (const [k, { at, length, sum: check, door }] of kinds.entries()) {
    tables.shapeOf[k] = shapeOf[k] ?? 0;
    tables.firstSum[k] = sum;
    tables.lineAt[k] = at;
    tables.lineLength[k] = length;
    tables.lineSum[k] = check;
    for (const part of doors[door]?.parts ?? []) {
      const says = stickerSays(part, units);
      if (tables.says.write(says, sum * SAYS_LENGTH, 'latin1') !== SAYS_LENGTH || says.length !== SAYS_LENGTH)
        throw new Error(`the sum of a sticker has ${SAYS_LENGTH} characters`);
      sum += 1;
    }
  }
  return { head, tables: buffer, lines: new Uint8Array(Buffer.concat(pieces)).buffer };
}

function shapeOfDoor(door: Plan['doors'][number] | undefined): DoorShape {
  if (door === undefined) throw new Error('every kind has a door');
  const bare = ({ stage, station, after }: DoorShape['stages'][number]) => ({ stage, station, after });
  return {
    parts: door.parts.map(({ part, stages }) => ({ part, stages: stages.map(bare) })),
    stages: door.stages.map(bare),
  };
}

/** The sum by which a document's text is known. */
export function hashOfText(text: string): string {
  return createHash('sha256').update(text).digest('base64');
}
