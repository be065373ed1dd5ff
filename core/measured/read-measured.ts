import { DOOR_FIELDS } from '../job/door-shape.ts';
import type { Fields } from '../fields/shape.ts';
import {
  type FaultList,
  isTree,
  join,
  readFields,
  refuseUnknown,
  report,
  type Tree,
} from '../fields/read-shape.ts';
import { kindOf } from '../fields/got.ts';
import type { Result } from '../fields/fault.ts';
import type { Units } from '../length/units.ts';
import type { DoorAsCut, Measured, PartAsCut } from './measured.ts';

const positive = { kind: 'length', positive: true } as const;
const CUT = { thickness: positive, grooveWidth: positive } as const satisfies Fields;
const PART_CUT = { ...CUT, width: positive } as const satisfies Fields;
const DOOR_CUT = {
  ...CUT,
  opening: DOOR_FIELDS.opening,
  survey: { ...DOOR_FIELDS.survey, whole: true },
} as const satisfies Fields;

/**
 * Reads {thickness?, grooveWidth?, doors?: {"A-1": {thickness?, grooveWidth?, opening?: {width?, height?}, survey?,
 * parts?: {"stile-left": {thickness?, grooveWidth?, width?}}}}}. A survey has all of its six measures.
 */
export function readMeasured(input: unknown, units: Units): Result<Measured> {
  const list: FaultList = { faults: [], dropped: 0 };
  const tree = treeAt(input, '(measured)', list);
  refuseUnknown(tree, [...Object.keys(CUT), 'doors'], '', list);
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
  const value = { ...readFields(tree, CUT, '', units, list), doors: Object.fromEntries(doors) };
  return list.faults.length > 0 ? { ok: false, faults: list.faults } : { ok: true, value };
}

function treeAt(input: unknown, path: string, list: FaultList): Tree {
  if (isTree(input)) return input;
  report(list, path, 'type.object', { got: kindOf(input) });
  return {};
}
