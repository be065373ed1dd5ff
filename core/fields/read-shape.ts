import { nameOfType, parseLength } from '../length/parse-length.ts';
import { findSpecies } from '../movement/find-species.ts';
import { SPECIES } from '../movement/species.ts';
import type { Fault } from './fault.ts';
import type { Units } from '../length/units.ts';
import type { Shape } from './shape.ts';

/** A part of the file whose fields are read but not yet settled: lengths exact, what was not given absent. */
export type Tree = { readonly [field: string]: unknown };

/** Where reading puts what it finds wrong; it stops collecting at a hundred, and counts on. */
export interface FaultList {
  readonly faults: Fault[];
  dropped: number;
}

const MOST_FAULTS = 100;

/** Adds a fault unless there are already a hundred. */
export function report(list: FaultList, path: string, code: string, message: string): void {
  if (list.faults.length < MOST_FAULTS) list.faults.push({ path, code, message });
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
      report(list, join(path, shown), 'unknown-field', `no such field; known here: ${known.join(', ')}`);
    }
}

/** "doors[0]" and "stile" to "doors[0].stile". */
export function join(path: string, field: string): string {
  return path === '' ? field : `${path}.${field}`;
}

/** Reads what stands in the file against its shape. Depth is bounded by the shape, not by the file. Undefined where faulty. */
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
      if (!read.ok) return void report(list, path, read.fault.code, read.fault.message);
      const sign = read.value.compare(0);
      if (sign < 0 && shape.signed === undefined)
        return void report(
          list,
          path,
          'negative',
          `expected a length that is not negative; got ${String(input)}`,
        );
      if (sign === 0 && shape.positive)
        return void report(list, path, 'zero', `expected a length greater than 0; got ${String(input)}`);
      return read.value;
    }
    case 'word':
      if (typeof input === 'string' && shape.of.includes(input)) return input;
      return void report(
        list,
        path,
        'word',
        `expected ${shape.of.map((each) => `"${each}"`).join(' or ')}; got ${shown(input)}`,
      );
    case 'species': {
      const found = typeof input === 'string' && input.length <= 60 ? findSpecies(input) : null;
      if (found !== null) return found;
      return void report(
        list,
        path,
        'species',
        `expected one of: ${SPECIES.join('; ')}; got ${shown(input)}`,
      );
    }
    case 'list':
      if (!Array.isArray(input))
        return void report(list, path, 'type', `expected a list; got ${nameOfType(input)}`);
      if (input.length > shape.most)
        return void report(list, path, 'too-many', `at most ${shape.most}; got ${input.length}`);
      return input.map((each: unknown, k) => readShape(each, shape.of, `${path}[${k}]`, units, list));
    case 'group': {
      if (input === null && shape.orNull) return null;
      if (!isTree(input))
        return void report(list, path, 'type', `expected an object; got ${nameOfType(input)}`);
      refuseUnknown(input, Object.keys(shape.fields), path, list);
      const entries: [string, unknown][] = [];
      for (const [name, field] of Object.entries(shape.fields)) {
        if (Object.hasOwn(input, name))
          entries.push([name, readShape(input[name], field, join(path, name), units, list)]);
        else if (shape.whole) report(list, join(path, name), 'required', 'required here');
      }
      return Object.fromEntries(entries);
    }
  }
}

/** A wrong value, shortened for a message. */
export function shown(input: unknown): string {
  if (typeof input !== 'string') return nameOfType(input);
  return JSON.stringify(input.length > 40 ? `${input.slice(0, 40)}…` : input);
}
