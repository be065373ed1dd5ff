import type { Plan, PlanDoor } from '#core/plan/plan.ts';
import { settableDoor } from '#core/settable/settable-door.ts';
import { paperStep } from '#core/settable/step.ts';
import { counted, say } from '#core/words/say.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { Size } from '../pdf/box.ts';
import { dotsPerModule, symbolOf } from '../pdf/symbol.ts';
import { footPage, frame, headPage, newPage, type PaperPage } from './paper-page.ts';
import { bodyOf, MARGIN } from './paper-size.ts';
import type { PaperPiece } from './paper-work.ts';
import { sizeThatFits } from './text-lines.ts';
import { asText, withUnit } from '../pdf/value-on-paper.ts';

const ROW = 44;
/** What an office printer resolves at least. */
const DPI = 600;
const BARS = 26;

/** The job's doors, a line each, with bars that call the door up: `D-` and the code of its first part. */
export function* jobSheet(plan: Plan, paper: Size, faces: Faces): Generator<PaperPiece> {
  const body = bodyOf(paper);
  const rows = Math.floor((body.height - 26) / ROW);
  const pages = Math.ceil(plan.doors.length / rows);
  for (let n = 0; n < pages; n += 1) {
    const own = plan.doors.slice(n * rows, (n + 1) * rows);
    const page = newPage(faces, paper);
    headPage(page, counted('paper.sheet-of', plan.doors.length), plan.job);
    columnHeads(page, columnsOf(page));
    for (const [k, door] of own.entries())
      doorLine(page, plan, door, body.y + body.height - 26 - (k + 1) * ROW, columnsOf(page));
    footPage(page, say('paper.sheet-foot'), n + 1, pages);
    yield { pages: [page], done: n + 1, of: pages };
  }
}

/** The office's code for a door's line. */
export function doorCode(door: PlanDoor): string {
  return `D-${door.parts[0]?.code ?? ''}`;
}

interface Columns {
  readonly name: number;
  readonly size: number;
  readonly parts: number;
  readonly boxes: readonly { readonly x: number; readonly text: string }[];
}

function columnsOf({ size }: PaperPage): Columns {
  const right = size.width - MARGIN;
  const steps = [say('paper.step-fit'), say('paper.step-glue'), say('paper.step-hung')];
  return {
    name: MARGIN + 172,
    size: MARGIN + 262,
    parts: right - 152,
    boxes: steps.map((text, k) => ({ x: right - (steps.length - k) * 38, text })),
  };
}

function columnHeads({ stream, size, faces }: PaperPage, { name, size: sizes, parts, boxes }: Columns): void {
  const y = size.height - MARGIN - 42;
  for (const [text, x] of [
    [say('paper.sheet-scan'), MARGIN],
    [say('paper.sheet-door'), name],
    [say('paper.finished'), sizes],
    [say('paper.parts'), parts],
  ] as const)
    stream.text(text, x, y, 8, 'bold');
  for (const { x, text } of boxes) {
    const type = sizeThatFits(text, faces.bold, 8, 6, 36);
    stream.text(text, x + (38 - faces.bold.width(text, type)) / 2, y, type, 'bold');
  }
}

function doorLine(page: PaperPage, plan: Plan, door: PlanDoor, y: number, columns: Columns): void {
  const { stream, size, faces } = page;
  stream.line(MARGIN, y, size.width - MARGIN, y, 0.4);
  callUp(page, doorCode(door), y);
  const middle = y + ROW / 2 - 4;
  const fit = (text: string, face: 'bold' | 'regular', wished: number, room: number) =>
    sizeThatFits(text, faces[face], wished, 6, room - 6);
  const named = fit(door.door, 'bold', 13, columns.size - columns.name);
  stream.text(door.door, columns.name, middle, named, 'bold');
  const { finishedWidth, finishedHeight } = settableDoor(door, paperStep(plan.units)).values;
  const sizes = `${asText(finishedWidth, plan.units)} × ${withUnit(finishedHeight, plan.units)}`;
  stream.text(sizes, columns.size, middle, fit(sizes, 'regular', 10, columns.parts - columns.size));
  stream.text(String(door.parts.length), columns.parts, middle, 10);
  for (const { x } of columns.boxes) frame(page, x + 11, y + ROW / 2 - 8, { width: 16, height: 16 });
}

/** The bars that call a door up, its code under them. */
function callUp({ stream }: PaperPage, code: string, y: number): void {
  const bars = symbolOf('code128', code);
  const dots = dotsPerModule('code128', DPI);
  const quiet = (bars.quiet * dots * 72) / DPI;
  stream.symbol(bars, MARGIN + quiet, y + 14, dots, DPI, BARS);
  stream.text(code, MARGIN + quiet, y + 5, 7);
}
