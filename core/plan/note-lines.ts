import type { Note } from './plan.ts';
import type { PrintedDoor } from './printed-plan.ts';

/** How much a note matters: what can hurt somebody, what is likely to go wrong, what is usually done otherwise. */
export type NoteRank = 'danger' | Note['level'];

const RANKS: readonly NoteRank[] = ['danger', 'warning', 'advice'];

/** Notes of what can hurt: a piece too short to be fed by hand, a cutter that does not follow its curve, a rip that cannot be stopped where it should. */
const DANGERS: ReadonlySet<string> = new Set(['short-piece', 'bearing', 'lag']);

/** One sentence of a note with the doors that it is true of: a mark where it is true of all its doors, else "A-2". */
export interface NoteTelling {
  readonly message: string;
  readonly doors: readonly string[];
}

/** Everything of one kind that is told of some doors. */
export interface NoteLine {
  readonly id: string;
  readonly rank: NoteRank;
  /** Every door that it touches. */
  readonly doors: readonly string[];
  /** Its sentences, each once: they differ in their figures. */
  readonly tellings: readonly NoteTelling[];
}

/** How much a note matters. */
export function rankOf({ id, level }: Pick<Note, 'id' | 'level'>): NoteRank {
  return DANGERS.has(id) ? 'danger' : level;
}

/**
 * The notes of some doors, one line a kind: danger first, then other warnings, then advice; within each rank what touches
 * the mark that is looked at first, else in the plan’s order.
 */
export function noteLines(doors: readonly PrintedDoor[], looked?: string): NoteLine[] {
  const ordered = doors.toSorted((a, b) => Number(b.mark === looked) - Number(a.mark === looked));
  const count = new Map<string, number>();
  const kinds = new Map<string, { readonly note: Note; readonly told: Map<string, PrintedDoor[]> }>();
  for (const door of ordered) {
    count.set(door.mark, (count.get(door.mark) ?? 0) + 1);
    for (const note of door.notes) {
      const kind = kinds.get(note.id) ?? { note, told: new Map<string, PrintedDoor[]>() };
      kinds.set(note.id, kind);
      const whose = kind.told.get(note.message) ?? [];
      kind.told.set(note.message, whose);
      if (whose.at(-1) !== door) whose.push(door);
    }
  }
  const lines = [...kinds.values()].map(({ note, told }): NoteLine => ({
    id: note.id,
    rank: rankOf(note),
    doors: named([...new Set([...told.values()].flat())], count),
    tellings: [...told].map(([message, whose]) => ({ message, doors: named(whose, count) })),
  }));
  return lines.toSorted((a, b) => RANKS.indexOf(a.rank) - RANKS.indexOf(b.rank));
}

/** The lines that are shown before somebody asks for the rest: at most so many, and every danger whatever their number. */
export function firstLines(lines: readonly NoteLine[], most: number): readonly NoteLine[] {
  const dangers = lines.filter(({ rank }) => rank === 'danger').length;
  return lines.slice(0, Math.max(most, dangers));
}

/** Doors by name: the mark alone where all of its doors are there. */
function named(doors: readonly PrintedDoor[], count: ReadonlyMap<string, number>): string[] {
  const byMark = new Map<string, string[]>();
  for (const { door, mark } of doors) {
    const own = byMark.get(mark);
    if (own === undefined) byMark.set(mark, [door]);
    else own.push(door);
  }
  return [...byMark].flatMap(([mark, own]) => (own.length === count.get(mark) ? [mark] : own));
}
