import type { Units } from '../length/units.ts';
import type { Note, Plan, PlanDoor } from '../plan/plan.ts';
import type { PrintedDoor, PrintedNote, PrintedPlan } from '../plan/printed-plan.ts';
import { printedAsRead } from '../plan/printed-as-read.ts';
import { hasWords, type Language, spokenNow } from '../words/say.ts';
import { printedFigures, type ReadValue, speakSaying } from './speak-saying.ts';

/** A plan as it is printed: its notes in the words of a language. Doors that share a note share it still. */
export function speakPlan(plan: Plan, language: Language = spokenNow()): PrintedPlan {
  return { ...plan, doors: speakDoors(plan.doors, plan.units, language) };
}

/** Doors of a plan likewise, in its units. */
export function speakDoors(
  doors: readonly PlanDoor[],
  units: Units,
  language: Language = spokenNow(),
): PrintedDoor[] {
  const spoken = new Map<Note, PrintedNote>();
  const speak = (note: Note): PrintedNote => {
    const known = spoken.get(note) ?? speakNote(note, units, language);
    spoken.set(note, known);
    return known;
  };
  return doors.map((door) => ({ ...door, notes: door.notes.map(speak) }));
}

/** A note in words; one that was kept in words stays as it was said. */
function speakNote(
  { id, level, path, message, figures }: Note,
  units: Units,
  language: Language,
): PrintedNote {
  const words = `note.${id}`;
  const read: ReadValue = (value) => printedAsRead(value, units);
  const told = message ?? (hasWords(words) ? speakSaying({ words, figures }, language, read) : id);
  return { id, level, path, message: told, figures: printedFigures(figures, language, read) };
}
