import { faultOf, type Result } from '../fields/fault.ts';
import { got, gotNumber, kindOf } from '../fields/got.ts';
import type { Units } from '../length/units.ts';
import { DOOR_FIELDS } from './door-shape.ts';
import type { Job, JobDoor } from './job.ts';
import {
  type FaultList,
  isTree,
  join,
  readFields,
  readShape,
  refuseUnknown,
  report,
} from '../fields/read-shape.ts';
import { readMoisture } from './moisture.ts';
import { type DoorFields, settleDoor } from './settle-door.ts';
import { WAY_FIELDS } from './ways.ts';

/** So many doors may be in a job, counting quantities. */
export const MOST_DOORS = 10_000;
const DOOR_NAMES = Object.keys(DOOR_FIELDS);
const WAYS = { kind: 'group', fields: WAY_FIELDS } as const;

/**
 * Reads a job file (already parsed from JSON). Every fault is returned with its path in the file, a stable code, and
 * what would be right; unknown fields are refused by name. Bounded in time by the number of doors allowed.
 */
export function readJob(input: unknown): Result<Job> {
  const list: FaultList = { faults: [], dropped: 0 };
  if (!isTree(input)) {
    report(list, '(file)', 'type.job', { got: kindOf(input) });
    return { ok: false, faults: list.faults };
  }
  refuseUnknown(
    input,
    ['format', 'id', 'job', 'due', 'units', 'ways', 'moisture', 'defaults', 'doors'],
    '',
    list,
  );
  if (input.format !== 1) report(list, 'format', 'format', { got: gotNumber(input.format) });
  const name = readName(input.job, 'job', 60, list);
  const id = input.id === undefined ? nameAsId(name, list) : readId(input.id, list);
  const due = input.due === undefined ? undefined : readDate(input.due, list);
  const units = input.units;
  if (units !== 'in' && units !== 'mm') {
    report(list, 'units', 'word', { words: { either: ['in', 'mm'] }, got: got(units) });
    return { ok: false, faults: list.faults };
  }
  const ways = input.ways === undefined ? undefined : readShape(input.ways, WAYS, 'ways', units, list);
  const moisture = input.moisture === undefined ? undefined : readMoisture(input.moisture, 'moisture', list);
  const defaults =
    input.defaults === undefined ? {} : readDoorFields(input.defaults, [], 'defaults', units, list);
  const doors = readDoors(input.doors, defaults, units, list);
  if (list.faults.length > 0) return { ok: false, faults: withCount(list) };
  return {
    ok: true,
    value: {
      id,
      job: name,
      ...(due === undefined ? {} : { due }),
      units,
      ...(ways === undefined ? {} : { ways }),
      ...(moisture === undefined ? {} : { moisture }),
      doors,
    },
  };
}

function readDoors(input: unknown, defaults: DoorFields, units: Units, list: FaultList): JobDoor[] {
  if (!Array.isArray(input) || input.length === 0) {
    report(list, 'doors', 'type.doors', {
      got: Array.isArray(input) ? { words: 'got.empty' } : kindOf(input),
    });
    return [];
  }
  if (input.length > MOST_DOORS) {
    report(list, 'doors', 'too-many.doors', { most: MOST_DOORS, count: input.length });
    return [];
  }
  const doors: JobDoor[] = [];
  const seen = new Map<string, string>();
  let total = 0;
  for (const [k, entry] of input.entries()) {
    const path = `doors[${k}]`;
    if (!isTree(entry)) {
      report(list, path, 'type.door', { got: kindOf(entry) });
      continue;
    }
    const mark = readName(entry.mark, join(path, 'mark'), 12, list);
    const earlier = seen.get(mark);
    if (earlier !== undefined && mark !== '')
      report(list, join(path, 'mark'), 'mark-twice', { mark: got(mark), path: earlier });
    else seen.set(mark, join(path, 'mark'));
    const quantity = entry.quantity === undefined ? 1 : entry.quantity;
    if (
      typeof quantity !== 'number' ||
      !Number.isInteger(quantity) ||
      quantity < 1 ||
      quantity > MOST_DOORS
    ) {
      report(list, join(path, 'quantity'), 'quantity', { most: MOST_DOORS, got: gotNumber(quantity) });
      continue;
    }
    total += quantity;
    const fields = readDoorFields(entry, ['mark', 'quantity'], path, units, list);
    const spec = settleDoor(fields, defaults, units, path, list);
    if (spec !== null) doors.push({ mark, quantity, path, spec });
  }
  if (total > MOST_DOORS) report(list, 'doors', 'too-many.quantities', { most: MOST_DOORS, count: total });
  return doors;
}

function readDoorFields(
  input: unknown,
  besides: readonly string[],
  path: string,
  units: Units,
  list: FaultList,
): DoorFields {
  if (!isTree(input)) {
    report(list, path, 'type.fields', { got: kindOf(input) });
    return {};
  }
  refuseUnknown(input, [...besides, ...DOOR_NAMES], path, list);
  return readFields(input, DOOR_FIELDS, path, units, list);
}

function readName(input: unknown, path: string, most: number, list: FaultList): string {
  const refuse = (code: string) => report(list, path, 'text', { most, got: got(input) }, code);
  if (typeof input !== 'string') refuse(input === undefined ? 'required' : 'type');
  else if (input.trim() === '' || [...input].length > most) refuse('text-length');
  else if (/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u.test(input)) refuse('text-control');
  else return input;
  return '';
}

function readId(input: unknown, list: FaultList): string {
  if (typeof input === 'string' && /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/.test(input)) return input;
  report(list, 'id', 'id', { got: got(input) });
  return '';
}

/** The name of a job that gives no id stands for it. */
function nameAsId(name: string, list: FaultList): string {
  // A browser takes these for a folder, so no address could name the job.
  if (/^\.{1,2}$/.test(name)) report(list, 'job', 'job-dots', { got: got(name) });
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
  report(list, 'due', 'date', { got: got(input) });
  return '';
}

function withCount(list: FaultList) {
  if (list.dropped === 0) return list.faults;
  return [...list.faults, faultOf('(file)', 'more-faults', { count: list.dropped })];
}
