import { type LengthFault, parseLength } from '../length/parse-length.ts';
import { findSpecies } from '../movement/find-species.ts';
import { SPECIES } from '../movement/species.ts';
import { eachSide } from '../plan/each-side.ts';
import { type Fault, faultOf, type FaultId } from './fault.ts';
import { got, kindOf } from './got.ts';
import type { Figure } from '../plan/figure.ts';
import type { Units } from '../length/units.ts';
import type { Read, ReadFields } from './read.ts';
import type { Fields, Shape } from './shape.ts';

/** A part of the file whose fields are read but not yet settled: lengths exact, what was not given absent. */
export type Tree = { readonly [field: string]: unknown };

/** Where reading puts what it finds wrong; it stops collecting at a hundred, and counts on. */
export interface FaultList {
  readonly faults: Fault[];
  dropped: number;
}

const MOST_FAULTS = 100;
const ONE_LENGTH = { kind: 'length' } as const;
/** What a group says of each side. */
export const SIDES_APART = {
  kind: 'group',
  fields: eachSide(() => ONE_LENGTH),
} as const satisfies Shape;

/** What a fault's sentence says it with; texts stand in it letter by letter. */
export type Reported = Readonly<Record<string, Figure>>;

/** Adds a fault unless there are already a hundred. Its code is its sentence's, where it is not given. */
export function report(
  list: FaultList,
  path: string,
  id: FaultId,
  figures: Reported = {},
  code?: string,
): void {
  const typed = Object.entries(figures).map(([name, figure]): [string, Figure] => [
    name,
    typeof figure === 'string' ? { typed: figure } : figure,
  ]);
  if (list.faults.length < MOST_FAULTS) list.faults.push(faultOf(path, id, Object.fromEntries(typed), code));
  else list.dropped += 1;
}

/** Is it an object with named fields? */
export function isTree(input: unknown): input is Tree {
  return typeof input === 'object' && input !== null && !Array.isArray(input);
}

/** Refuses, by name, every field that is not among those known. Own fields only: no prototype is looked at. */
export function refuseUnknown(input: Tree, known: readonly string[], path: string, list: FaultList): void {
  for (const name of Object.keys(input))
    if (!known.includes(name)) {
      const shown = name === '' ? '""' : name.length > 40 ? `${name.slice(0, 40)}…` : name;
      report(list, join(path, shown), 'unknown-field', { known: known.join(', ') });
    }
}

/** "doors[0]" and "stile" to "doors[0].stile". */
export function join(path: string, field: string): string {
  return path === '' ? field : `${path}.${field}`;
}

/** Reads what stands in the file against its shape. Depth is bounded by the shape, not by the file. Undefined where faulty. */
export function readShape<S extends Shape>(
  input: unknown,
  shape: S,
  path: string,
  units: Units,
  list: FaultList,
): Read<S> | undefined;
export function readShape(
  input: unknown,
  shape: Shape,
  path: string,
  units: Units,
  list: FaultList,
): unknown {
  switch (shape.kind) {
    case 'length': {
      const read = parseLength(input, units);
      if (!read.ok) return void noLength(list, path, read.fault, input);
      const sign = read.value.compare(0);
      if (sign < 0 && shape.signed === undefined)
        return void report(list, path, 'negative', { got: String(input) });
      if (sign === 0 && shape.positive) return void report(list, path, 'zero', { got: String(input) });
      return read.value;
    }
    case 'sides': {
      if (isTree(input)) return readShape(input, SIDES_APART, path, units, list);
      const all = readShape(input, ONE_LENGTH, path, units, list);
      return all === undefined ? undefined : eachSide(() => all);
    }
    case 'word':
      if (typeof input === 'string' && shape.of.includes(input)) return input;
      return void report(list, path, 'word', { words: { either: shape.of }, got: got(input) });
    case 'species': {
      const found = typeof input === 'string' && input.length <= 60 ? findSpecies(input) : null;
      if (found !== null) return found;
      return void report(list, path, 'species', { species: SPECIES.join('; '), got: got(input) });
    }
    case 'list':
      if (!Array.isArray(input)) return void report(list, path, 'type.list', { got: kindOf(input) });
      if (input.length > shape.most)
        return void report(list, path, 'too-many', { most: shape.most, count: input.length });
      return withoutGap(
        input.map((each: unknown, k) => readShape(each, shape.of, `${path}[${k}]`, units, list)),
      );
    case 'group': {
      if (input === null && shape.orNull) return null;
      if (!isTree(input)) return void report(list, path, 'type.object', { got: kindOf(input) });
      refuseUnknown(input, Object.keys(shape.fields), path, list);
      const read = readFields(input, shape.fields, path, units, list, shape.whole);
      return shape.whole && Object.keys(read).length < Object.keys(shape.fields).length ? undefined : read;
    }
  }
}

/** Those of the fields that stand in an object, each against its shape; what is faulty is left out. With `whole` each must stand there. */
export function readFields<F extends Fields>(
  input: Tree,
  fields: F,
  path: string,
  units: Units,
  list: FaultList,
  whole?: true,
): ReadFields<F>;
export function readFields(
  input: Tree,
  fields: Fields,
  path: string,
  units: Units,
  list: FaultList,
  whole?: true,
): Tree {
  const read: [string, unknown][] = [];
  for (const [name, shape] of Object.entries(fields)) {
    if (!Object.hasOwn(input, name)) {
      if (whole) report(list, join(path, name), 'required.here');
      continue;
    }
    const value = readShape(input[name], shape, join(path, name), units, list);
    if (value !== undefined) read.push([name, value]);
  }
  return Object.fromEntries(read);
}

/** A list is read whole or not at all. */
function withoutGap(read: readonly unknown[]): readonly unknown[] | undefined {
  return read.includes(undefined) ? undefined : read;
}

function noLength(list: FaultList, path: string, { code, kind, figures }: LengthFault, input: unknown): void {
  const id = kind === undefined ? code : (`length-digits.${kind}` as const);
  report(list, path, id, { got: kindOf(input), ...figures });
}
