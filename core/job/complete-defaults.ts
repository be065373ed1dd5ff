import type { Length } from '../length/length.ts';
import { typeLength } from '../length/type-length.ts';
import type { Units } from '../length/units.ts';
import { eachSide, type EachSide, SIDES } from '../plan/each-side.ts';
import { doorDefaults } from './defaults.ts';
import { DOOR_FIELDS } from './door-shape.ts';
import type { Fields, Shape } from '../fields/shape.ts';
import { isTree, type Tree } from '../fields/read-shape.ts';

/**
 * A job file whose `defaults` name every door field that there is a built-in value for, so that it says the same whatever
 * is built in later. What it names itself stays as it was typed; what it does not name comes from `below`, a group field by
 * field. Doors need no more than they say: they stand over these. A file that is none is given back as it is.
 */
export function completeDefaults(file: Tree, below: (units: Units) => Tree): Tree {
  const { units, defaults = {} } = file;
  if ((units !== 'in' && units !== 'mm') || !isTree(defaults)) return file;
  return { ...file, defaults: over(below(units), defaults, DOOR_FIELDS) };
}

/** The built-in door of today as a job file would write it. */
export function builtInFields(units: Units): Tree {
  return fieldsAsTyped(doorDefaults(units), DOOR_FIELDS, units);
}

/** A group replaces field by field, also where all sides are one length below; all else, lists and null too, whole. */
function over(below: Tree, own: Tree, fields: Fields = {}): Tree {
  const added = Object.entries(below).filter(([name]) => !Object.hasOwn(own, name));
  const kept = Object.entries(own).map(([name, value]): [string, unknown] => {
    const said = Object.hasOwn(below, name) ? below[name] : undefined;
    const apart = fields[name]?.kind === 'sides' && said !== undefined && !isTree(said);
    const under = apart ? eachSide(() => said) : said;
    return [name, isTree(under) && isTree(value) ? over(under, value) : value];
  });
  return Object.fromEntries([...kept, ...added]);
}

function fieldsAsTyped(tree: Tree, fields: Readonly<Record<string, Shape>>, units: Units): Tree {
  return Object.fromEntries(
    Object.entries(tree).map(([name, value]) => [name, asTyped(value, fields[name], units)]),
  );
}

function asTyped(value: unknown, shape: Shape | undefined, units: Units): unknown {
  switch (shape?.kind) {
    case 'length':
      return typeLength(value as Length, units);
    case 'sides':
      return sidesAsTyped(value as EachSide<Length>, units);
    case 'group':
      return isTree(value) ? fieldsAsTyped(value, shape.fields, units) : value;
    case 'list':
      return Array.isArray(value) ? value.map((each: unknown) => asTyped(each, shape.of, units)) : value;
    case 'word':
    case 'species':
    case undefined:
      return value;
  }
}

/** One length where all sides are alike, as it was always written; else each side's. */
function sidesAsTyped(sides: EachSide<Length>, units: Units): unknown {
  const alike = SIDES.every((side) => sides[side].equals(sides.left));
  return alike ? typeLength(sides.left, units) : eachSide((side) => typeLength(sides[side], units));
}
