import { noteLines } from '#core/plan/note-lines.ts';
import { speakDoors } from '#core/telling/speak-plan.ts';
import type { Plan, PlanDoor } from '#core/plan/plan.ts';
import { settableDoor } from '#core/settable/settable-door.ts';
import { paperStep } from '#core/settable/step.ts';
import { say } from '#core/words/say.ts';
import type { Size } from '../pdf/box.ts';
import type { Faces } from '../pdf/typeface.ts';
import { cautions } from './card-cautions.ts';
import { drawings, DRAWN } from './card-drawings.ts';
import { settingPages } from './card-layout.ts';
import { keptRows, NOTE_PITCH, type NoteLine, notesOf, writeNotes } from './card-notes.ts';
import { PART_PITCH, partRows, writeParts } from './card-parts.ts';
import { cardStations } from './card-stations.ts';
import { footPage, headPage, newPage, type PaperPage } from './paper-page.ts';
import { bodyOf } from './paper-size.ts';
import type { PaperPiece } from './paper-work.ts';

/** The setup card of every door, one after another. */
export function* setupCards(plan: Plan, paper: Size, faces: Faces): Generator<PaperPiece> {
  for (const [k, door] of plan.doors.entries())
    yield { pages: setupCard(plan, door, paper, faces), done: k + 1, of: plan.doors.length };
}

/** A door's setup card in settable numbers: the door drawn with its section, sizes and parts; then every setting by station and stage. */
function setupCard(plan: Plan, exact: PlanDoor, paper: Size, faces: Faces): PaperPage[] {
  const door = settableDoor(exact, paperStep(plan.units));
  const title = say('paper.card-of', { door: door.door });
  const first = newPage(faces, paper);
  headPage(first, title, plan.job);
  const stations = cardStations(door, plan.units);
  const floor = cautions(first, stations);
  const { notes, below } = shareOut(plan, door, paper, faces, floor);
  drawings(first, door, plan.units, below);
  const end = writeParts(first, door, plan.units, below - 18);
  writeNotes(first, notes, end - 20, floor);
  const settings = settingPages(stations, paper, faces, (page) => headPage(page, title, plan.job));
  const pages = [first, ...settings];
  for (const [k, page] of pages.entries()) footPage(page, say('paper.card-foot'), k + 1, pages.length);
  return pages;
}

/** How the first page is shared: the notes, by kinds where the dangers have no room whole, and the height that drawings end at. */
function shareOut(
  plan: Plan,
  door: PlanDoor,
  paper: Size,
  faces: Faces,
  floor: number,
): { readonly notes: readonly NoteLine[]; readonly below: number } {
  const body = bodyOf(paper);
  const parts = floor + 52 + partRows(door) * PART_PITCH;
  const most = Math.floor((body.y + body.height - DRAWN - parts) / NOTE_PITCH);
  const told = noteLines(speakDoors([door], plan.units));
  const whole = notesOf(told, faces, body.width);
  const notes = keptRows(whole) <= most ? whole : notesOf(told, faces, body.width, 'kinds');
  const highest = parts + Math.max(keptRows(notes), Math.min(notes.length, 6)) * NOTE_PITCH;
  return { notes, below: Math.max(highest, body.y + body.height * 0.44) };
}
