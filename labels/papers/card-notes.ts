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

/** From one base line to the next, in points. */
export const NOTE_PITCH = 10;

/** What the plan warns of, in lines: danger first and bold, each sentence, or a sentence for each kind. */
export function notesOf(told: readonly KindLine[], faces: Faces, width: number, by?: 'kinds'): NoteLine[] {
  return told.flatMap((line) => {
    const bold = line.rank === 'danger';
    const sentences = by === 'kinds' ? [kindWords(line)] : line.tellings.map(({ message }) => message);
    return sentences
      .flatMap((each) => wrapLines(`– ${each}`, faces[bold ? 'bold' : 'regular'], 8, width))
      .map((text) => ({ text, bold }));
  });
}

/** How many lines must have room: every danger, and the line that says that there is more. */
export function keptRows(notes: readonly NoteLine[]): number {
  const dangers = notes.filter(({ bold }) => bold).length;
  return dangers > 0 && dangers < notes.length ? dangers + 1 : dangers;
}

/** The notes from a height down to a floor; where not all have room the last line says that there is more. */
export function writeNotes(page: PaperPage, notes: readonly NoteLine[], from: number, floor: number): void {
  const { stream, size } = page;
  const { x } = bodyOf(size);
  const most = Math.floor((from - 12 - floor) / NOTE_PITCH);
  if (notes.length === 0 || most < 1) return;
  stream.text(say('notes.title'), x, from, 10, 'bold');
  const more = { text: say('paper.more-notes'), bold: false };
  const shown = notes.length > most ? [...notes.slice(0, most - 1), more] : notes;
  let y = from - 12;
  for (const { text, bold } of shown) {
    stream.text(text, x, y, 8, bold ? 'bold' : 'regular');
    y -= NOTE_PITCH;
  }
}
