import { DOOR_FIELDS } from '../job/door-shape.ts';
import type { Fields } from '../fields/shape.ts';
import {
  type FaultList,
  isTree,
  join,
  readFields,
  readShape,
  refuseUnknown,
  report,
  type Tree,
} from '../fields/read-shape.ts';
import { kindOf } from '../fields/got.ts';
import type { Result } from '../fields/fault.ts';
import { typeLength } from '../length/type-length.ts';
import type { Units } from '../length/units.ts';
import { type DoorAsCut, type JobSize, type Measured, type PartAsCut, SIZE_NAMES } from './measured.ts';

const positive = { kind: 'length', positive: true } as const;
const CUT = { thickness: positive, grooveWidth: positive } as const satisfies Fields;
const PART_CUT = { ...CUT, length: positive, width: positive } as const satisfies Fields;
const DOOR_CUT = {
  ...CUT,
  opening: DOOR_FIELDS.opening,
  survey: { ...DOOR_FIELDS.survey, whole: true },
} as const satisfies Fields;
const EACH_SIZE = {
  kind: 'list',
  most: 100,
  of: { kind: 'group', whole: true, fields: { of: positive, is: positive } },
} as const;

/**
 * Reads {thickness?, grooveWidth?, doors?: {"A-1": {thickness?, grooveWidth?, opening?: {width?, height?}, survey?,
 * parts?: {"stile-left": {thickness?, grooveWidth?, length?, width?}}}}}. A survey has all of its six measures. Of the
 * whole job thickness and groove are a length, or a list [{of, is}] with the size ordered and what it came out as, each
 * size once; whether its doors have those sizes is asked of the job (`nominalFaults`).
 */
export function readMeasured(input: unknown, units: Units): Result<Measured> {
  const list: FaultList = { faults: [], dropped: 0 };
  const tree = treeAt(input, '(measured)', list);
  refuseUnknown(tree, [...SIZE_NAMES, 'doors'], '', list);
  const doors = Object.entries(tree.doors === undefined ? {} : treeAt(tree.doors, 'doors', list)).map(
    ([door, value]): [string, DoorAsCut] => {
      const path = `doors.${door.slice(0, 20)}`;
      const own = treeAt(value, path, list);
      refuseUnknown(own, [...Object.keys(DOOR_CUT), 'parts'], path, list);
      const parts = Object.entries(
        own.parts === undefined ? {} : treeAt(own.parts, join(path, 'parts'), list),
      ).map(([part, sizes]): [string, PartAsCut] => {
        const place = join(path, `parts.${part.slice(0, 20)}`);
        const cut = treeAt(sizes, place, list);
        refuseUnknown(cut, Object.keys(PART_CUT), place, list);
        return [part, readFields(cut, PART_CUT, place, units, list)];
      });
      return [door, { ...readFields(own, DOOR_CUT, path, units, list), parts: Object.fromEntries(parts) }];
    },
  );
  const sizes: { -readonly [Name in keyof Measured]?: JobSize } = {};
  for (const name of SIZE_NAMES) {
    const size = tree[name] === undefined ? undefined : readSize(tree[name], name, units, list);
    if (size !== undefined) sizes[name] = size;
  }
  const value = { ...sizes, doors: Object.fromEntries(doors) };
  return list.faults.length > 0 ? { ok: false, faults: list.faults } : { ok: true, value };
}

/** What was measured of a whole job: one length, or a list with a line for each size ordered. */
function readSize(input: unknown, path: string, units: Units, list: FaultList): JobSize | undefined {
  if (!Array.isArray(input)) {
    const all = readShape(input, positive, path, units, list);
    return all === undefined ? undefined : { all };
  }
  const each = readShape(input, EACH_SIZE, path, units, list);
  if (each === undefined) return undefined;
  for (const [k, { of }] of each.entries()) {
    const first = each.findIndex((other) => other.of.equals(of));
    if (first < k)
      report(list, `${path}[${k}].of`, 'size-twice', {
        size: typeLength(of, units),
        path: `${path}[${first}].of`,
      });
  }
  return { each };
}

function treeAt(input: unknown, path: string, list: FaultList): Tree {
  if (isTree(input)) return input;
  report(list, path, 'type.object', { got: kindOf(input) });
  return {};
}
