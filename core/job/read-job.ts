import { nameOfType } from '../length/parse-length.ts';
import type { Result } from '../fields/fault.ts';
import type { Units } from '../length/units.ts';
import { DOOR_FIELDS } from './door-shape.ts';
import type { Job, JobDoor } from './job.ts';
import {
  type FaultList,
  isTree,
  join,
  readShape,
  refuseUnknown,
  report,
  shown,
  type Tree,
} from '../fields/read-shape.ts';
import { settleDoor } from './settle-door.ts';

/** So many doors may be in a job, counting quantities. */
export const MOST_DOORS = 10_000;
const DOOR_NAMES = Object.keys(DOOR_FIELDS);

/**
 * Reads a job file (already parsed from JSON). Every fault is returned with its path in the file, a stable code, and
 * what would be right; unknown fields are refused by name. Bounded in time by the number of doors allowed.
 */
export function readJob(input: unknown): Result<Job> {
  const list: FaultList = { faults: [], dropped: 0 };
  if (!isTree(input)) {
    report(
      list,
      '(file)',
      'type',
      `expected a job: an object with format, job, units and doors; got ${nameOfType(input)}`,
    );
    return { ok: false, faults: list.faults };
  }
  refuseUnknown(input, ['format', 'id', 'job', 'due', 'units', 'defaults', 'doors'], '', list);
  if (input.format !== 1)
    report(
      list,
      'format',
      'format',
      `expected 1; got ${typeof input.format === 'number' ? input.format : shown(input.format)}`,
    );
  const name = readName(input.job, 'job', 60, list);
  const id = input.id === undefined ? nameAsId(name, list) : readId(input.id, list);
  const due = input.due === undefined ? undefined : readDate(input.due, list);
  const units = input.units;
  if (units !== 'in' && units !== 'mm') {
    report(list, 'units', 'word', `expected "in" or "mm"; got ${shown(units)}`);
    return { ok: false, faults: list.faults };
  }
  const defaults =
    input.defaults === undefined ? {} : readDoorFields(input.defaults, [], 'defaults', units, list);
  const doors = readDoors(input.doors, defaults, units, list);
  if (list.faults.length > 0) return { ok: false, faults: withCount(list) };
  return { ok: true, value: { id, job: name, ...(due === undefined ? {} : { due }), units, doors } };
}

function readDoors(input: unknown, defaults: Tree, units: Units, list: FaultList): JobDoor[] {
  if (!Array.isArray(input) || input.length === 0) {
    report(
      list,
      'doors',
      'type',
      `expected a list of at least one door; got ${Array.isArray(input) ? 'an empty one' : nameOfType(input)}`,
    );
    return [];
  }
  if (input.length > MOST_DOORS) {
    report(list, 'doors', 'too-many', `at most ${MOST_DOORS} doors in a job; got ${input.length}`);
    return [];
  }
  const doors: JobDoor[] = [];
  const seen = new Map<string, string>();
  let total = 0;
  for (const [k, entry] of input.entries()) {
    const path = `doors[${k}]`;
    if (!isTree(entry)) {
      report(
        list,
        path,
        'type',
        `expected a door: an object with mark and opening; got ${nameOfType(entry)}`,
      );
      continue;
    }
    const mark = readName(entry.mark, join(path, 'mark'), 12, list);
    const earlier = seen.get(mark);
    if (earlier !== undefined && mark !== '')
      report(
        list,
        join(path, 'mark'),
        'mark-twice',
        `each mark once in a job; ${shown(mark)} stands at ${earlier} already: give a quantity there, or another mark here`,
      );
    else seen.set(mark, join(path, 'mark'));
    const quantity = entry.quantity === undefined ? 1 : entry.quantity;
    if (
      typeof quantity !== 'number' ||
      !Number.isInteger(quantity) ||
      quantity < 1 ||
      quantity > MOST_DOORS
    ) {
      report(
        list,
        join(path, 'quantity'),
        'quantity',
        `expected a whole number from 1 to ${MOST_DOORS}; got ${typeof quantity === 'number' ? quantity : shown(quantity)}`,
      );
      continue;
    }
    total += quantity;
    const fields = readDoorFields(entry, ['mark', 'quantity'], path, units, list);
    const spec = settleDoor(fields, defaults, units, path, list);
    if (spec !== null) doors.push({ mark, quantity, path, spec });
  }
  if (total > MOST_DOORS)
    report(
      list,
      'doors',
      'too-many',
      `at most ${MOST_DOORS} doors in a job, counting quantities; got ${total}`,
    );
  return doors;
}

function readDoorFields(
  input: unknown,
  besides: readonly string[],
  path: string,
  units: Units,
  list: FaultList,
): Tree {
  if (!isTree(input)) {
    report(list, path, 'type', `expected an object of door fields; got ${nameOfType(input)}`);
    return {};
  }
  refuseUnknown(input, [...besides, ...DOOR_NAMES], path, list);
  const read: [string, unknown][] = [];
  for (const [name, shape] of Object.entries(DOOR_FIELDS))
    if (Object.hasOwn(input, name))
      read.push([name, readShape(input[name], shape, join(path, name), units, list)]);
  return Object.fromEntries(read);
}

function readName(input: unknown, path: string, most: number, list: FaultList): string {
  const right = `expected a text of 1 to ${most} characters without control characters`;
  if (typeof input !== 'string')
    report(list, path, input === undefined ? 'required' : 'type', `${right}; got ${nameOfType(input)}`);
  else if (input.trim() === '' || [...input].length > most)
    report(list, path, 'text-length', `${right}; got ${shown(input)}`);
  else if (/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u.test(input))
    report(list, path, 'text-control', `${right}; got ${shown(input)}`);
  else return input;
  return '';
}

function readId(input: unknown, list: FaultList): string {
  if (typeof input === 'string' && /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/.test(input)) return input;
  report(
    list,
    'id',
    'id',
    `expected 1 to 64 letters, digits, ".", "_" or "-", beginning with a letter or digit; got ${shown(input)}`,
  );
  return '';
}

/** The name of a job that gives no id stands for it. */
function nameAsId(name: string, list: FaultList): string {
  // A browser takes these for a folder, so no address could name the job.
  if (/^\.{1,2}$/.test(name))
    report(list, 'job', 'job-dots', `a job called ${shown(name)} needs an id, or another name`);
  return name;
}

/** Is this a job's id: one that a job file may give, or the name of a job that gives none? */
export function isJobId(text: string): boolean {
  return (
    withoutFault((list) => readId(text, list)) ||
    withoutFault((list) => nameAsId(readName(text, 'job', 60, list), list))
  );
}

/** The mark and the number in a door's name, "MARK-2"; null when it is none. */
export function readDoorName(text: string): { readonly mark: string; readonly k: number } | null {
  const at = text.lastIndexOf('-');
  const [mark, number] = [text.slice(0, Math.max(0, at)), text.slice(at + 1)];
  const k = /^[1-9]\d{0,4}$/.test(number) ? Number(number) : 0;
  const fits = k >= 1 && k <= MOST_DOORS && withoutFault((list) => readName(mark, 'mark', 12, list));
  return fits ? { mark, k } : null;
}

function withoutFault(read: (list: FaultList) => unknown): boolean {
  const list: FaultList = { faults: [], dropped: 0 };
  read(list);
  return list.faults.length === 0;
}

function readDate(input: unknown, list: FaultList): string {
  const parts = typeof input === 'string' ? /^(\d{4})-(\d{2})-(\d{2})$/.exec(input) : null;
  if (parts !== null) {
    const date = new Date(Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3])));
    if (date.toISOString().slice(0, 10) === input) return input;
  }
  report(list, 'due', 'date', `expected a day of the calendar as YYYY-MM-DD; got ${shown(input)}`);
  return '';
}

function withCount(list: FaultList) {
  if (list.dropped === 0) return list.faults;
  return [
    ...list.faults,
    { path: '(file)', code: 'more-faults', message: `${list.dropped} more faults like these` },
  ];
}
