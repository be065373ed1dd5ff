import type { PlanDoor } from '#core/plan/plan.ts';
import { partName } from '#core/telling/names.ts';
import { counted, say } from '#core/words/say.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { Box } from '../pdf/box.ts';
import { codeText } from './card-parts.ts';
import type { PaperPage } from './paper-page.ts';
import { sizeThatFits, wrapLines } from './text-lines.ts';

const LEAST = 6;
const ROW = 9;
/** From the table's last row to what is said of the doors that are not in it. */
const REST = 13;
const TITLE = 16;
/** White between two tables side by side. */
const APART = 12;

/** The table of the part codes of doors that are alike: a row a door, as many tables side by side as have room. */
interface Codes {
  readonly type: number;
  readonly name: number;
  readonly cell: number;
  /** The parts of each line of a door's row: one line where all codes stand beside each other. */
  readonly lines: readonly (readonly number[])[];
  readonly tables: number;
  readonly head: number;
}

/** How high the table stands with the codes of all doors. */
export function codesHeight(doors: readonly PlanDoor[], faces: Faces, width: number): number {
  const set = codesSet(doors, faces, width);
  return TITLE + set.head + Math.ceil(doors.length / set.tables) * rowHeight(set);
}

/** The codes of as many doors as have room in a box, from its upper edge down; where there are more doors, where theirs are. */
export function writeCodes(page: PaperPage, doors: readonly PlanDoor[], box: Box): void {
  const { stream, faces } = page;
  const top = box.y + box.height;
  stream.line(box.x, top - 2, box.x + box.width, top - 2, 0.8);
  const set = codesSet(doors, faces, box.width);
  const rows = (room: number) => Math.max(0, Math.floor((room - TITLE - set.head) / rowHeight(set)));
  const all = rows(box.height) * set.tables >= doors.length;
  const shown = all ? doors : doors.slice(0, rows(box.height - REST) * set.tables);
  stream.text(say('paper.card-codes'), box.x, top - 12, 9, 'bold');
  const high = Math.ceil(shown.length / set.tables);
  for (let k = 0; k < set.tables && k * high < shown.length; k += 1)
    writeTable(page, shown.slice(k * high, (k + 1) * high), set, {
      x: box.x + k * (tableWidth(set) + APART),
      y: top - TITLE,
    });
  if (all) return;
  const words = counted('paper.card-codes-rest', doors.length - shown.length);
  const under = top - TITLE - (shown.length === 0 ? 0 : set.head + high * rowHeight(set));
  stream.text(words, box.x, under - REST + 3, sizeThatFits(words, faces.regular, 7.5, LEAST, box.width));
}

function writeTable(
  { stream, faces }: PaperPage,
  doors: readonly PlanDoor[],
  set: Codes,
  { x, y }: { readonly x: number; readonly y: number },
): void {
  const at = (k: number) => x + set.name + k * set.cell;
  for (const [row, parts] of set.lines.entries())
    for (const [k, part] of parts.entries())
      for (const [line, text] of headLines(doors[0], part, set, faces).entries())
        stream.text(text, at(k), y - headAbove(doors[0], set, faces, row) - (line + 1) * LEAST * 1.15, LEAST);
  for (const [n, { door, parts }] of doors.entries()) {
    const top = y - set.head - n * rowHeight(set);
    stream.line(x, top, x + tableWidth(set), top, 0.2);
    stream.text(
      door,
      x,
      top - ROW + 2.2,
      sizeThatFits(door, faces.bold, set.type, LEAST, set.name - 3),
      'bold',
    );
    for (const [row, own] of set.lines.entries())
      for (const [k, part] of own.entries())
        stream.text(codeText(parts[part]?.code ?? ''), at(k), top - (row + 1) * ROW + 2.2, set.type);
  }
}

/** Larger type, unless the smaller brings one more table abreast. */
function codesSet(doors: readonly PlanDoor[], faces: Faces, width: number): Codes {
  const [large, small] = [setIn(6.5, 7, doors, faces, width), setIn(LEAST, 5, doors, faces, width)];
  return small.tables > large.tables ? small : large;
}

function setIn(type: number, white: number, doors: readonly PlanDoor[], faces: Faces, width: number): Codes {
  const widest = (texts: readonly string[], face: keyof Faces) =>
    texts.reduce((most, text) => Math.max(most, faces[face].width(text, type)), 0);
  const codes = doors.flatMap(({ parts }) => parts.map(({ code }) => codeText(code)));
  const cell = widest(codes, 'regular') + white;
  const names = doors.map(({ door }) => door);
  const name = Math.min(80, widest(names, 'bold')) + white;
  const parts = doors[0]?.parts.length ?? 0;
  const abreast = Math.max(1, Math.min(parts, Math.floor((width - name + white) / cell)));
  const lines = Array.from({ length: Math.ceil(parts / abreast) }, (_, row) =>
    Array.from({ length: Math.min(abreast, parts - row * abreast) }, (__, k) => row * abreast + k),
  );
  const bare: Codes = { type, name, cell, lines, tables: 1, head: 0 };
  const tables = Math.max(1, Math.floor((width + APART) / (tableWidth(bare) + APART)));
  return { ...bare, tables, head: headAbove(doors[0], bare, faces, lines.length) + 2 };
}

function tableWidth({ name, cell, lines }: Codes): number {
  return name + cell * (lines[0]?.length ?? 0);
}

function rowHeight({ lines }: Codes): number {
  return lines.length * ROW + (lines.length > 1 ? 1.5 : 0);
}

/** The name of a part over its codes. */
function headLines(door: PlanDoor | undefined, part: number, { cell }: Codes, faces: Faces): string[] {
  return wrapLines(partName(door?.parts[part]?.part ?? ''), faces.regular, LEAST, cell - 3);
}

/** How high the heads of the rows above a row stand. */
function headAbove(door: PlanDoor | undefined, set: Codes, faces: Faces, row: number): number {
  return set.lines.slice(0, row).reduce((sum, parts) => {
    const most = Math.max(...parts.map((part) => headLines(door, part, set, faces).length));
    return sum + most * LEAST * 1.15;
  }, 0);
}
