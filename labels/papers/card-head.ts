import type { Units } from '#core/length/units.ts';
import type { NoteLine as KindLine } from '#core/plan/note-lines.ts';
import type { PlanDoor } from '#core/plan/plan.ts';
import { counted, say } from '#core/words/say.ts';
import type { Box, Size } from '../pdf/box.ts';
import type { Faces } from '../pdf/typeface.ts';
import { doorHeight, drawDoor, drawSections, sizesHeight, sizesIn, writeSizes } from './card-drawings.ts';
import type { CardLevel } from './card-layout.ts';
import { notesHeight, notesWithin, writeNotes } from './card-notes.ts';
import { partsList, writeParts } from './card-parts.ts';
import { OWN_NUMBER } from './card-steps.ts';
import { type DoorRun, doorRuns, type NamedDoor } from './door-names.ts';
import type { PaperPage } from './paper-page.ts';
import { bodyOf, MARGIN } from './paper-size.ts';
import { wrapLines } from './text-lines.ts';

/** What stands over the columns of a card's first page. */
export interface CardHead {
  readonly title: string;
  /** At which height it ends, set at a level. */
  endsAt(level: CardLevel): number;
  write(page: PaperPage, level: CardLevel, leftOut: boolean): void;
}

interface ForHead {
  readonly units: Units;
  /** In settable numbers. */
  readonly door: PlanDoor;
  readonly doors: readonly PlanDoor[];
  readonly paper: Size;
  readonly faces: Faces;
  readonly notes: readonly KindLine[];
  /** A door's place in the job. */
  readonly placeOf: (door: PlanDoor) => number;
}

/** Type of the doors' names where the page's head has no room for them, and of what comes before all cautions. */
const NAMES = 8;
const FIRST = 7.5;
const PITCH = 10;
const GAP = 14;
/** More lines of names are cut, and the rest counted. */
const MOST_NAMES = 8;

/** The head of a card: its doors' names, the door drawn, its sections, sizes and parts, notes, and what comes before all cautions. */
export function cardHead(card: ForHead): CardHead {
  const { units, door, paper, faces } = card;
  const body = bodyOf(paper);
  const { title, names } = titleOf(card);
  const top = body.y + body.height - names.length * PITCH - (names.length > 0 ? 4 : 0);
  const first = (leftOut: boolean) => firstLines(leftOut, faces, body.width);
  // Room for the longer one, so that what is left out does not hang on it.
  const under = first(true).length * FIRST * 1.25 + 14;
  const notesAt = (level: CardLevel) => notesWithin(card.notes, faces, body.width, level.notes);
  const drawnAt = (level: CardLevel) => drawnIn(card, level);
  return {
    title,
    endsAt: (level) => top - drawnAt(level).height - notesHeight(notesAt(level)) - under,
    write: (page, level, leftOut) => {
      for (const [k, text] of names.entries())
        page.stream.text(text, body.x, body.y + body.height - (k + 1) * PITCH + 2, NAMES);
      const drawn = drawnAt(level);
      const { height, columns, parts, sizes } = drawn;
      const y = top - height;
      drawDoor(page, door, units, { ...columns.door, y, height });
      writeParts(page, parts, { ...columns.parts, y: top });
      const beside = drawn.under === 'sections' ? sizesHeight(sizes) + 4 : 0;
      const box = { ...columns.sections, y: y + beside, height: height - beside };
      const end = drawSections(page, door, units, box);
      if (drawn.under === 'sections') writeSizes(page, sizes, columns.sections.x, end);
      else writeSizes(page, sizes, columns.parts.x, top - parts.height - 4);
      const notes = notesAt(level);
      writeNotes(page, notes, y);
      const ruled = y - notesHeight(notes) - 4;
      page.stream.line(body.x, ruled, body.x + body.width, ruled, 0.5);
      for (const [k, text] of first(leftOut).entries())
        page.stream.text(text, body.x, ruled - (k + 1) * FIRST * 1.25, FIRST, 'bold');
    },
  };
}

/** What is drawn at a level: as high as the door, its parts, and the sizes under them or under the sections have need of. */
function drawnIn({ door, doors, units, faces, paper }: ForHead, { drawn, close = false }: CardLevel) {
  const columns = columnsOf(bodyOf(paper), close);
  const parts = partsList(door, units, faces, {
    codes: doors.length === 1,
    close,
    width: columns.parts.width,
  });
  const under = parts.columns === null ? 'sections' : 'parts';
  const sizes = sizesIn(door, units, faces, columns[under].width);
  const beside = parts.height + (under === 'parts' ? sizesHeight(sizes) + 4 : 0);
  return { columns, parts, under, sizes, height: Math.max(drawn, doorHeight(door), beside) } as const;
}

/** Where door, sections and parts stand side by side; parts that have a line each are given more room. */
function columnsOf({ x, width }: Box, close: boolean) {
  const [door, sections] = close ? [width * 0.34, width * 0.27] : [width * 0.38, width * 0.29];
  return {
    door: { x, width: door },
    sections: { x: x + door + GAP, width: sections },
    parts: { x: x + door + sections + 2 * GAP, width: width - door - sections - 2 * GAP },
  };
}

/** What comes before all cautions; and where to find what had no room. */
function firstLines(leftOut: boolean, faces: Faces, width: number): string[] {
  const there = say('paper.card-left-out', { steps: say('ui.how'), safety: say('ui.cautions') });
  const own = say('paper.card-own-number', { sign: OWN_NUMBER });
  const text = [say('caution.first'), own, ...(leftOut ? [there] : [])].join(' ');
  return wrapLines(text, faces.bold, FIRST, width);
}

/** The doors in the page's head, or counted there and named in lines under it. */
function titleOf(card: ForHead): { readonly title: string; readonly names: readonly string[] } {
  const { doors, faces, paper, placeOf } = card;
  const named = doors.map((door): NamedDoor => ({ door: door.door, mark: door.mark, at: placeOf(door) }));
  const runs = doorRuns(named);
  const title = say('paper.card-of', { door: listOf(runs) });
  const room = (paper.width - 2 * MARGIN) * 0.6;
  if (doors.length === 1 || faces.bold.width(title, 11) <= room) return { title, names: [] };
  const names = nameLines(
    runs,
    () => doorRuns(named, 'job'),
    (text) => wrapLines(text, faces.regular, NAMES, bodyOf(paper).width),
  );
  return { title: counted('paper.card-doors', doors.length), names };
}

/** Names of doors in lines: by mark, or where those are too many as they follow each other in the job; what has no room is counted. */
function nameLines(
  runs: readonly DoorRun[],
  inJob: () => readonly DoorRun[],
  wrap: (text: string) => string[],
): string[] {
  const byMark = wrap(listOf(runs));
  if (byMark.length <= MOST_NAMES) return byMark;
  const all = inJob();
  const ordered = (doors: string) => wrap(say('paper.card-in-order', { doors }));
  const cut = (shown: number) => {
    const more = all.slice(shown).reduce((sum, { count }) => sum + count, 0);
    return ordered(`${listOf(all.slice(0, shown))} ${counted('paper.card-more-doors', more)}`);
  };
  const whole = ordered(listOf(all));
  if (whole.length <= MOST_NAMES) return whole;
  let shown = all.length - 1;
  while (shown > 1 && cut(shown).length > MOST_NAMES) shown -= Math.ceil(shown / 20);
  return cut(shown);
}

function listOf(runs: readonly DoorRun[]): string {
  return runs.map(({ text }) => text).join(', ');
}
