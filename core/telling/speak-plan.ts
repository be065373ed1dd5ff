import { length } from '../length/length.ts';
import { parseLength } from '../length/parse-length.ts';
import { showValue, shownText, USUAL_ROUNDING } from '../length/reading.ts';
import type { Units } from '../length/units.ts';
import type { Note, Plan, PlanDoor, SettingValue } from '../plan/plan.ts';
import type { PrintedDoor, PrintedNote, PrintedPlan } from '../plan/printed-plan.ts';
import { printedAsRead } from '../plan/printed-as-read.ts';
import { hasWords, type Language, spokenNow } from '../words/say.ts';
import { printedFigures, type ReadValue, speakSaying } from './speak-saying.ts';

const ROUNDED_FROM = { in: length(1), mm: length(25) } as const;

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

/** A note is read, not set: of an inch or more nobody reads finer than 1/64, of 25 mm or more than a hundredth. What is smaller may be all that it is about. */
function roundTold(told: SettingValue, value: SettingValue, units: Units): SettingValue {
  const exact = typeof value === 'string' ? parseLength(value, units) : null;
  if (exact?.ok !== true || exact.value.compare(ROUNDED_FROM[units]) < 0) return told;
  const shown = showValue(value, units, { ...USUAL_ROUNDING, places: 2 });
  return shown.near ? shownText(shown) : told;
}

/** A note in words; one that was kept in words stays as it was said. */
function speakNote(
  { id, level, path, message, figures }: Note,
  units: Units,
  language: Language,
): PrintedNote {
  const words = `note.${id}`;
  const read: ReadValue = (value) => printedAsRead(value, units);
  const asTold: ReadValue = (value) => roundTold(read(value), value, units);
  const told = message ?? (hasWords(words) ? speakSaying({ words, figures }, language, asTold) : id);
  return { id, level, path, message: told, figures: printedFigures(figures, language, read) };
}
