import { noteLines } from '#core/plan/note-lines.ts';
import { speakDoors } from '#core/telling/speak-plan.ts';
import type { Plan, PlanDoor } from '#core/plan/plan.ts';
import { settableDoor } from '#core/settable/settable-door.ts';
import { paperStep } from '#core/settable/step.ts';
import { say } from '#core/words/say.ts';
import type { Size } from '../pdf/box.ts';
import type { Faces } from '../pdf/typeface.ts';
import { type AlikeDoors, alikeDoors } from './alike-doors.ts';
import { codesHeight, writeCodes } from './card-codes.ts';
import { cardHead, type CardHead } from './card-head.ts';
import { type LaidOut, layOutCard } from './card-layout.ts';
import { cardStations } from './card-works.ts';
import { writePlaced } from './column-flow.ts';
import { footPage, headPage, newPage, type PaperPage } from './paper-page.ts';
import { bodyOf } from './paper-size.ts';
import type { PaperPiece } from './paper-work.ts';

/** The set-up cards of some of a plan's doors, one for all that are alike; how many doors have theirs is what is done. */
export function* setupCards(
  plan: Plan,
  chosen: readonly PlanDoor[],
  paper: Size,
  faces: Faces,
): Generator<PaperPiece> {
  const of = chosen.length;
  const groups = yield* lookedThrough(chosen);
  const places = new Map(plan.doors.map((door, place) => [door, place]));
  const placeOf = (door: PlanDoor) => places.get(door) ?? 0;
  let done = 0;
  for (const alike of groups) {
    done += alike.doors.length;
    yield { pages: setupCard(plan, alike, { paper, faces, placeOf }), done, of };
  }
}

interface On {
  readonly paper: Size;
  readonly faces: Faces;
  readonly placeOf: (door: PlanDoor) => number;
}

/** So many doors are compared at once. */
const PIECE = 250;

/** The doors that are alike, found in pieces. */
function* lookedThrough(doors: readonly PlanDoor[]): Generator<PaperPiece, AlikeDoors[]> {
  const looking = alikeDoors(doors);
  for (let k = 1; ; k += 1) {
    const step = looking.next();
    if (step.done === true) return step.value;
    if (k % PIECE === 0) yield { pages: [], done: 0, of: doors.length };
  }
}

/** A card in settable numbers: the door drawn with its sections, sizes, parts and notes; then every work by station; the codes of doors that are alike. */
function setupCard(plan: Plan, { door: exact, doors }: AlikeDoors, on: On): PaperPage[] {
  const { paper, faces } = on;
  const door = settableDoor(exact, paperStep(plan.units));
  const head = cardHead({ ...on, units: plan.units, door, doors, notes: notesOf(plan, door) });
  const laid = layOutCard({
    stations: cardStations(door, plan.units),
    paper,
    faces,
    startsAt: (level) => head.endsAt(level),
    foots: footsFor(doors, paper, faces),
  });
  const pages = Array.from({ length: laid.pages }, () => newPage(faces, paper));
  writeWorks(pages, head, laid);
  if (doors.length > 1) writeCodesUnder(pages, doors, laid, paper, faces);
  for (const [k, page] of pages.entries()) {
    headPage(page, head.title, plan.job);
    footPage(page, say('paper.card-foot'), k + 1, pages.length);
  }
  return pages;
}

/** What the plan warns of, at the door that stands for all that are alike. */
function notesOf({ units }: Plan, door: PlanDoor) {
  return noteLines(speakDoors([door], units));
}

function writeWorks(pages: readonly PaperPage[], head: CardHead, laid: LaidOut): void {
  for (const [k, page] of pages.entries()) {
    if (k === 0) head.write(page, laid.level, laid.leftOut);
    writePlaced(
      page,
      laid.placed.filter(({ column }) => column.page === k),
    );
  }
}

/** What the table of codes takes at the foot: all of it, or less; the codes of some two dozen doors at least where there are so many. */
function footsFor(doors: readonly PlanDoor[], paper: Size, faces: Faces): number[] {
  if (doors.length === 1) return [0];
  const { width, height } = bodyOf(paper);
  const all = codesHeight(doors, faces, width) + WHITE;
  return [0.45, 0.3, 0.21].map((share) => Math.min(all, height * share));
}

const WHITE = 10;

/** The table of codes under the columns of the last page, on a page more where the first has no room for any of it. */
function writeCodesUnder(
  pages: PaperPage[],
  doors: readonly PlanDoor[],
  { endsAt }: LaidOut,
  paper: Size,
  faces: Faces,
): void {
  const body = bodyOf(paper);
  const room = endsAt - WHITE - body.y;
  const last = pages.at(-1);
  if (last !== undefined && (pages.length > 1 || room >= codesHeight(doors, faces, body.width))) {
    writeCodes(last, doors, { ...body, height: room });
    return;
  }
  const page = newPage(faces, paper);
  pages.push(page);
  writeCodes(page, doors, body);
}
