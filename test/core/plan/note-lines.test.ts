import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { firstLines, noteLines } from '#core/plan/note-lines.ts';
import type { PrintedDoor, PrintedNote } from '#core/plan/printed-plan.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';
import { faultWords } from '#core/words/faults.ts';
import { hasWords } from '#core/words/say.ts';

const HALL = planFile({
  format: 1,
  job: 'Hall',
  units: 'in',
  defaults: {
    bead: '1/4',
    tenon: { length: '1', outerSetback: '1/4', innerSetback: '1/4' },
    panel: { thickness: '1/4' },
  },
  doors: [
    { mark: 'A', quantity: 2, opening: { width: '16', height: '30' }, bottomRail: { width: '4' }, horn: '0' },
    { mark: 'B', opening: { width: '16', height: '30' }, horn: '0', bottomRail: { width: '5' } },
    { mark: 'LOW', opening: { width: '12', height: '9' } },
  ],
});
const { doors } = HALL.ok ? speakPlan(HALL.value, 'en') : { doors: [] };

/** A door of which nothing but its name and notes is read. */
function doorWith(door: string, mark: string, notes: readonly PrintedNote[]): PrintedDoor {
  const [first] = doors;
  if (first === undefined) throw new Error('no door');
  return { ...first, door, mark, notes };
}
const note = (id: string, level: PrintedNote['level'], message = id): PrintedNote => ({
  id,
  level,
  path: 'doors[0].x',
  message,
  figures: {},
});

/** With the spaces that a person sees. */
const plain = (words: string) => words.replaceAll('\u00a0', ' ');

test('what can hurt stands first, then other warnings, then advice; a line a kind', () => {
  const lines = noteLines(doors);
  expect(lines.map(({ id, rank, doors: own }) => `${rank} ${id} ${own.join()}`)).toEqual([
    'danger short-piece LOW',
    'warning end-splits A,B',
    'advice tenon-wide A,B',
    'advice no-horn A,B',
  ]);
});

test('a kind keeps each of its sentences with the doors that it is true of', () => {
  const wide = noteLines(doors).find(({ id }) => id === 'tenon-wide');
  expect(
    wide?.tellings.map(({ doors: own, message }) => `${own.join()}: ${plain(message).slice(0, 38)}`),
  ).toEqual(['A: the tenon of the bottom rail, 3 1/4 wi', 'B: the tenon of the bottom rail, 4 1/4 wi']);
  const short = noteLines(doors).find(({ id }) => id === 'short-piece');
  expect(short?.tellings.length).toBeGreaterThan(1);
  for (const { message } of short?.tellings ?? []) expect(message).toContain('never hand-feed it');
});

test('a note that only some doors of a mark have names them, one that all have names the mark', () => {
  const some = [
    doorWith('A-1', 'A', [note('x', 'warning'), note('y', 'advice')]),
    doorWith('A-2', 'A', [note('y', 'advice')]),
  ];
  expect(noteLines(some).map(({ id, doors: own }) => `${id} ${own.join()}`)).toEqual(['x A-1', 'y A']);
});

test('what touches the mark that is looked at stands first in its rank, and that mark before the others', () => {
  const some = [
    doorWith('A-1', 'A', [note('x', 'warning'), note('y', 'warning')]),
    doorWith('B-1', 'B', [note('y', 'warning'), note('z', 'warning'), note('short-piece', 'warning')]),
  ];
  expect(noteLines(some, 'B').map(({ id, doors: own }) => `${id} ${own.join()}`)).toEqual([
    'short-piece B',
    'y B,A',
    'z B',
    'x A',
  ]);
});

test('no danger is held back however many other notes there are, and however many dangers', () => {
  const notes = [
    ...Array.from({ length: 9 }, (_, k) => note(`w${k}`, 'warning')),
    note('short-piece', 'warning'),
    note('bearing', 'warning'),
  ];
  const lines = noteLines([doorWith('A-1', 'A', notes)]);
  expect(firstLines(lines, 4).map(({ id }) => id)).toEqual(['short-piece', 'bearing', 'w0', 'w1']);
  expect(firstLines(lines, 1).map(({ id }) => id)).toEqual(['short-piece', 'bearing']);
});

test('every kind of note has words that hold whatever its figures', () => {
  const ids = Object.keys(faultWords)
    .filter((key) => key.startsWith('note.'))
    .map((key) => key.replace('note.', ''));
  expect(ids.filter((id) => !hasWords(`note-kind.${id}`))).toEqual([]);
});
