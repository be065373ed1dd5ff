import { doorView } from '#core/views/door-view.ts';
import { jointSections } from '#core/views/joint-sections.ts';
import { layOut } from '#core/drawing/layout.ts';
import { noteLines } from '#core/plan/note-lines.ts';
import type { Plan, PlanDoor } from '#core/plan/plan.ts';
import { kindWords } from '#core/telling/kind-words.ts';
import { partName, stationName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { Size } from '../pdf/box.ts';
import { settingPages } from './card-layout.ts';
import { type CardStation, cardStations } from './card-settings.ts';
import { GAP } from './column-flow.ts';
import { footPage, headPage, newPage, type PaperPage } from './paper-page.ts';
import { bodyOf } from './paper-size.ts';
import type { PaperPiece } from './paper-work.ts';
import { sizeThatFits, wrapLines } from './text-lines.ts';
import { asText, withUnit } from '../pdf/value-on-paper.ts';

/** Height of the cautions' type. */
const CAUTION = 6.5;

/** Height of each of the two sections: through stile and panel, through stile and tenon. */
const SECTION = 96;

/** What the drawings and the sizes beside them need at least. */
const DRAWN = 320;

/** The setup card of every door, one after another. */
export function* setupCards(plan: Plan, paper: Size, faces: Faces): Generator<PaperPiece> {
  for (const [k, door] of plan.doors.entries())
    yield { pages: setupCard(plan, door, paper, faces), done: k + 1, of: plan.doors.length };
}

/** A door's setup card: the door drawn with its section, sizes and parts; then every setting by station and stage. */
function setupCard(plan: Plan, door: PlanDoor, paper: Size, faces: Faces): PaperPage[] {
  const title = say('paper.card-of', { door: door.door });
  const first = newPage(faces, paper);
  headPage(first, title, plan.job);
  const stations = cardStations(door, plan.units);
  const body = bodyOf(paper);
  const floor = cautions(first, stations);
  const parts = floor + 52 + partRows(door) * 12.5;
  const most = Math.floor((body.y + body.height - DRAWN - parts) / 10);
  const whole = notesOf(door, faces, body.width);
  const notes = keptRows(whole) <= most ? whole : notesOf(door, faces, body.width, 'kinds');
  const highest = parts + Math.max(keptRows(notes), Math.min(notes.length, 6)) * 10;
  const below = Math.max(highest, body.y + body.height * 0.44);
  drawings(first, plan, door, below);
  lower(first, plan, door, notes, { from: below - 18, floor });
  const settings = settingPages(stations, paper, faces, (page) => headPage(page, title, plan.job));
  const pages = [first, ...settings];
  for (const [k, page] of pages.entries()) footPage(page, say('paper.card-foot'), k + 1, pages.length);
  return pages;
}

/** The upper part of the first page: door, section and sizes, as high as what stands below leaves them. */
function drawings(page: PaperPage, plan: Plan, door: PlanDoor, below: number): void {
  const { stream, size, faces } = page;
  const body = bodyOf(size);
  const top = body.y + body.height;
  const high = top - below;
  const wide = body.width * 0.6;
  const view = doorView(door, plan.units);
  // The head of the card names the door; in a low opening its name would stand over the rails.
  const unnamed = view.shapes.filter((shape) => shape.kind !== 'label' || shape.role !== 'door-name');
  const picture = layOut({ ...view, shapes: unnamed }, { width: wide, height: high, text: 9 });
  stream.figure(picture, { x: body.x, y: top - high, weight: 0.5 });
  const right = body.x + wide + 16;
  const room = body.width - wide - 16;
  let y = top - 12;
  const write = (text: string, bold = false) => {
    for (const line of wrapLines(text, faces[bold ? 'bold' : 'regular'], 9, room)) {
      stream.text(line, right, y, 9, bold ? 'bold' : 'regular');
      y -= 11.5;
    }
  };
  const sections = jointSections(door, plan.units);
  if (sections.length > 0) write(say('paper.section'), true);
  for (const section of sections) {
    const figure = layOut(section, { width: room, height: SECTION, text: 8.5 });
    stream.figure(figure, { x: right, y: y + 8 - SECTION, weight: 0.5 });
    y -= SECTION + 6;
  }
  const { values } = door;
  const unit = (value: string) => withUnit(value, plan.units);
  write(say('paper.finished'), true);
  write(`${unit(values.finishedWidth)} × ${unit(values.finishedHeight)}`);
  write(say('paper.trims', { side: unit(values.trimEachSide), end: unit(values.trimEachEnd) }));
  write(
    say('paper.sight', { width: unit(values.sightWidth), heights: values.sightHeights.map(unit).join(', ') }),
  );
}

/** How many lines the parts take: more than nine stand in two columns. */
function partRows({ parts }: PlanDoor): number {
  return parts.length > 9 ? Math.ceil(parts.length / 2) : parts.length;
}

interface NoteLine {
  readonly text: string;
  readonly bold: boolean;
}

/** What the plan warns of, in lines: danger first and bold, each sentence, or a sentence for each kind. */
function notesOf(door: PlanDoor, faces: Faces, width: number, by?: 'kinds'): NoteLine[] {
  return noteLines([door]).flatMap((line) => {
    const bold = line.rank === 'danger';
    const sentences = by === 'kinds' ? [kindWords(line)] : line.tellings.map(({ message }) => message);
    return sentences
      .flatMap((each) => wrapLines(`– ${each}`, faces[bold ? 'bold' : 'regular'], 8, width))
      .map((text) => ({ text, bold }));
  });
}

/** How many lines must have room: every danger, and the line that says that there is more. */
function keptRows(notes: readonly NoteLine[]): number {
  const dangers = notes.filter(({ bold }) => bold).length;
  return dangers > 0 && dangers < notes.length ? dangers + 1 : dangers;
}

/** The parts with their codes and sizes, and what the plan warns of. */
function lower(
  page: PaperPage,
  plan: Plan,
  door: PlanDoor,
  notes: readonly NoteLine[],
  { from, floor }: { readonly from: number; readonly floor: number },
): void {
  const { stream, size, faces } = page;
  const body = bodyOf(size);
  stream.text(say('paper.parts'), body.x, from, 10, 'bold');
  const rows = partRows(door);
  const narrow = rows < door.parts.length;
  for (const [k, part] of door.parts.entries()) {
    const x = body.x + Math.floor(k / rows) * (body.width / 2);
    const y = from - 12.5 * ((k % rows) + 1);
    const [length = '', width = '', thickness = ''] = [part.length, part.width, part.thickness].map((each) =>
      asText(each, plan.units),
    );
    const sizes = `${say('paper.size', { length, width, thickness })} ${plan.units}`;
    const room = narrow ? body.width / 2 - 140 : body.width - 190;
    stream.text(partName(part.part), x, y, narrow ? 8 : 9);
    stream.text(
      `${part.code.slice(0, 5)} ${part.code.slice(5)}`,
      x + (narrow ? 60 : 100),
      y,
      narrow ? 8 : 9,
      'bold',
    );
    stream.text(sizes, x + (narrow ? 130 : 190), y, sizeThatFits(sizes, faces.regular, 9, 6, room));
  }
  let y = from - 12.5 * rows - 20;
  const most = Math.floor((y - 12 - floor) / 10);
  if (notes.length === 0 || most < 1) return;
  stream.text(say('notes.title'), body.x, y, 10, 'bold');
  y -= 12;
  const more = { text: say('paper.more-notes'), bold: false };
  const shown = notes.length > most ? [...notes.slice(0, most - 1), more] : notes;
  for (const { text, bold } of shown) {
    stream.text(text, body.x, y, 8, bold ? 'bold' : 'regular');
    y -= 10;
  }
}

/** What can hurt, station by station, in columns at the foot of the first page; gives the height that they end at. */
function cautions(page: PaperPage, stations: readonly CardStation[]): number {
  const { stream, size, faces } = page;
  const body = bodyOf(size);
  const width = (body.width - 2 * GAP) / 3;
  const lines = [
    ...wrapLines(say('caution.first'), faces.bold, CAUTION, width).map((text) => ({ text, bold: true })),
    ...stations.flatMap(({ station, cautions: own }) => [
      { text: stationName(station), bold: true },
      ...own.flatMap((text) =>
        wrapLines(text, faces.regular, CAUTION, width).map((each) => ({ text: each, bold: false })),
      ),
    ]),
  ];
  const pitch = CAUTION * 1.22;
  const rows = Math.ceil(lines.length / 3);
  const top = body.y + rows * pitch;
  stream.line(body.x, top + 9, body.x + body.width, top + 9, 0.5);
  for (const [k, { text, bold }] of lines.entries())
    stream.text(
      text,
      body.x + Math.floor(k / rows) * (width + GAP),
      top - (k % rows) * pitch,
      CAUTION,
      bold ? 'bold' : 'regular',
    );
  return top + 14;
}
