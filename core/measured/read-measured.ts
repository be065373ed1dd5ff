import { DOOR_FIELDS } from '../job/door-shape.ts';
import { type Shape } from '../fields/shape.ts';
import {
  type FaultList,
  isTree,
  join,
  readShape,
  refuseUnknown,
  report,
  type Tree,
} from '../fields/read-shape.ts';
import { kindOf } from '../fields/got.ts';
import type { Result } from '../fields/fault.ts';
import type { Units } from '../length/units.ts';
import type { AsCut, DoorAsCut, Measured, PartAsCut } from './measured.ts';

const positive: Shape = { kind: 'length', positive: true };

/**
 * Reads {thickness?, grooveWidth?, doors?: {"A-1": {thickness?, grooveWidth?, opening?: {width?, height?}, survey?,
 * parts?: {"stile-left": {thickness?, grooveWidth?, width?}}}}}. A survey has all of its six measures.
 */
export function readMeasured(input: unknown, units: Units): Result<Measured> {
  const list: FaultList = { faults: [], dropped: 0 };
  const tree = treeAt(input, '(measured)', list);
  refuseUnknown(tree, ['thickness', 'grooveWidth', 'doors'], '', list);
  const doors = Object.entries(tree.doors === undefined ? {} : treeAt(tree.doors, 'doors', list)).map(
    ([door, value]): [string, DoorAsCut] => {
      const path = `doors.${door.slice(0, 20)}`;
      const own = treeAt(value, path, list);
      refuseUnknown(own, ['thickness', 'grooveWidth', 'opening', 'survey', 'parts'], path, list);
      const parts = Object.entries(
        own.parts === undefined ? {} : treeAt(own.parts, join(path, 'parts'), list),
      ).map(([part, sizes]): [string, PartAsCut] => {
        const place = join(path, `parts.${part.slice(0, 20)}`);
        const cut = treeAt(sizes, place, list);
        refuseUnknown(cut, ['thickness', 'grooveWidth', 'width'], place, list);
        return [part, { ...sizesOf(cut, place, units, list), ...lengthOf(cut, 'width', place, units, list) }];
      });
      return [
        door,
        {
          ...sizesOf(own, path, units, list),
          ...groupOf(own, 'opening', DOOR_FIELDS.opening, path, units, list),
          ...groupOf(own, 'survey', { ...DOOR_FIELDS.survey, whole: true }, path, units, list),
          parts: Object.fromEntries(parts),
        },
      ];
    },
  );
  const value = { ...sizesOf(tree, '', units, list), doors: Object.fromEntries(doors) };
  return list.faults.length > 0 ? { ok: false, faults: list.faults } : { ok: true, value };
}

function treeAt(input: unknown, path: string, list: FaultList): Tree {
  if (isTree(input)) return input;
  report(list, path, 'type.object', { got: kindOf(input) });
  return {};
}

function sizesOf(tree: Tree, path: string, units: Units, list: FaultList): AsCut {
  return {
    ...lengthOf(tree, 'thickness', path, units, list),
    ...lengthOf(tree, 'grooveWidth', path, units, list),
  };
}

/** The one field of this name, where it is there and reads. */
function groupOf(
  tree: Tree,
  name: 'opening' | 'survey',
  shape: Shape,
  path: string,
  units: Units,
  list: FaultList,
): Partial<Pick<DoorAsCut, 'opening' | 'survey'>> {
  if (!Object.hasOwn(tree, name)) return {};
  const read = readShape(tree[name], shape, join(path, name), units, list);
  return read === undefined ? {} : { [name]: read };
}

function lengthOf(
  tree: Tree,
  name: string,
  path: string,
  units: Units,
  list: FaultList,
): Record<string, never> {
  if (!Object.hasOwn(tree, name)) return {};
  const read = readShape(tree[name], positive, join(path, name), units, list);
  return (read === undefined ? {} : { [name]: read }) as Record<string, never>;
}
