import type { NoteLine as KindLine } from '#core/plan/note-lines.ts';
import { kindWords } from '#core/telling/kind-words.ts';
import { say } from '#core/words/say.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { PaperPage } from './paper-page.ts';
import { bodyOf } from './paper-size.ts';
import { wrapLines } from './text-lines.ts';

/** One line of what the plan warns of. */
export interface NoteLine {
  readonly text: string;
  readonly bold: boolean;
}

const TYPE = 7.5;
/** From one base line to the next, and from what stands above to the title and from that to the first line, in points. */
const PITCH = 9.4;
const TITLE = 13;

/**
 * What the plan warns of, in so many lines at most where that can be: danger first and bold, each sentence, or a
 * sentence for each kind where the dangers have no room whole. No danger is left out; what else has no room is told of.
 */
export function notesWithin(
  told: readonly KindLine[],
  faces: Faces,
  width: number,
  most: number,
): NoteLine[] {
  const whole = notesOf(told, faces, width);
  const notes = keptRows(whole) <= most ? whole : notesOf(told, faces, width, 'kinds');
  const rows = Math.max(most, keptRows(notes));
  if (notes.length <= rows) return notes;
  return [...notes.slice(0, rows - 1), { text: say('paper.more-notes'), bold: false }];
}

function notesOf(told: readonly KindLine[], faces: Faces, width: number, by?: 'kinds'): NoteLine[] {
  return told.flatMap((line) => {
    const bold = line.rank === 'danger';
    const sentences = by === 'kinds' ? [kindWords(line)] : line.tellings.map(({ message }) => message);
    return sentences
      .flatMap((each) => wrapLines(`– ${each}`, faces[bold ? 'bold' : 'regular'], TYPE, width))
      .map((text) => ({ text, bold }));
  });
}

/** How many lines must have room: every danger, and the line that says that there is more. */
function keptRows(notes: readonly NoteLine[]): number {
  const dangers = notes.filter(({ bold }) => bold).length;
  return dangers > 0 && dangers < notes.length ? dangers + 1 : dangers;
}

/** How high notes stand with their title. */
export function notesHeight(notes: readonly NoteLine[]): number {
  return notes.length === 0 ? 0 : TITLE + notes.length * PITCH + 4;
}

/** The notes from a height down. */
export function writeNotes({ stream, size }: PaperPage, notes: readonly NoteLine[], from: number): void {
  if (notes.length === 0) return;
  const { x } = bodyOf(size);
  stream.text(say('notes.title'), x, from - TITLE + 3, 9.5, 'bold');
  for (const [k, { text, bold }] of notes.entries())
    stream.text(text, x, from - TITLE - (k + 1) * PITCH + 3, TYPE, bold ? 'bold' : 'regular');
}
