import { type Length, length, over, times } from '../length/length.ts';
import { parseLength } from '../length/parse-length.ts';
import { isPrintedLength, printLength } from '../length/print-length.ts';
import { typeLength } from '../length/type-length.ts';
import type { SettingValue } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
import { DOOR_FIELDS } from './door-shape.ts';
import { type Shape } from '../fields/shape.ts';
import { isTree, SIDES_APART, type Tree } from '../fields/read-shape.ts';

/** Exactly: 1 in = 25.4 mm by definition (international inch, 1959). */
const MM_IN_AN_INCH = length(127, 5);

/**
 * A job file in the other units: every length of its defaults and doors converted exactly, everything else as it was. What
 * is no length stays as it was typed, so that it is told there.
 */
export function convertJob(file: Tree, to: Units): Tree {
  if (file.units === to) return file;
  const from: Units = to === 'in' ? 'mm' : 'in';
  const door = (each: unknown) => (isTree(each) ? converted(each, DOOR_FIELDS, from, to) : each);
  return {
    ...file,
    units: to,
    ...(file.defaults === undefined ? {} : { defaults: door(file.defaults) }),
    ...(Array.isArray(file.doors) ? { doors: file.doors.map(door) } : {}),
  };
}

/**
 * A value of a printed plan as a plan in other units prints it: exact lengths are converted, counts and words stay. Null
 * where it leaves the fractions: six decimals cannot be converted to the very same six.
 */
export function convertPrinted(value: SettingValue, from: Units, to: Units): SettingValue | null {
  if (from === to || typeof value === 'number') return value;
  if (isPrintedLength(value.replace(/^-/, ''))) {
    const read = parseLength(value, from);
    return read.ok ? printLength(lengthIn(read.value, to)) : null;
  }
  return /^-?\d+\.\d+$/.test(value) ? null : value;
}

/** Any tree of lengths alone, and of lists of them, in other units, exactly. What is no length stays as it stands. */
export function convertLengths(tree: Tree, from: Units, to: Units): Tree {
  if (from === to) return tree;
  return Object.fromEntries(Object.entries(tree).map(([name, value]) => [name, lengthsIn(value, from, to)]));
}

function lengthsIn(value: unknown, from: Units, to: Units): unknown {
  if (Array.isArray(value)) return value.map((each: unknown) => lengthsIn(each, from, to));
  return isTree(value) ? convertLengths(value, from, to) : valueIn(value, { kind: 'length' }, from, to);
}

/** A length that stood in the other units, in these. */
function lengthIn(value: Length, to: Units): Length {
  return to === 'mm' ? times(value, MM_IN_AN_INCH) : over(value, MM_IN_AN_INCH);
}

function converted(tree: Tree, fields: Readonly<Record<string, Shape>>, from: Units, to: Units): Tree {
  return Object.fromEntries(
    Object.entries(tree).map(([name, value]) => [
      name,
      Object.hasOwn(fields, name) ? valueIn(value, fields[name], from, to) : value,
    ]),
  );
}

function valueIn(value: unknown, shape: Shape | undefined, from: Units, to: Units): unknown {
  switch (shape?.kind) {
    case 'length': {
      const read = parseLength(value, from);
      if (!read.ok) return value;
      return typeLength(lengthIn(read.value, to), to);
    }
    case 'sides':
      return isTree(value)
        ? converted(value, SIDES_APART.fields, from, to)
        : valueIn(value, { kind: 'length' }, from, to);
    case 'group':
      return isTree(value) ? converted(value, shape.fields, from, to) : value;
    case 'list':
      return Array.isArray(value) ? value.map((each: unknown) => valueIn(each, shape.of, from, to)) : value;
    case 'word':
    case 'species':
    case undefined:
      return value;
  }
}
