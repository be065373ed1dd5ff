import type { Units } from '../length/units.ts';
import { doorDefaults } from './defaults.ts';
import { DOOR_FIELDS } from './door-shape.ts';
import { type Shape } from '../fields/shape.ts';
import type { DoorSpec, OpeningSurvey } from './job.ts';
import { type FaultList, isTree, join, report, type Tree } from '../fields/read-shape.ts';

/**
 * One door with every field settled: the door over the job's defaults over the built-in ones, field by field; null and
 * lists replace whole. Null, with faults reported, when something that has no default is missing.
 */
export function settleDoor(
  door: Tree,
  defaults: Tree,
  units: Units,
  path: string,
  list: FaultList,
): DoorSpec | null {
  const settled = over(over(doorDefaults(units), defaults), door);
  const before = list.faults.length + list.dropped;
  needAll(settled.opening, Object.keys(DOOR_FIELDS.opening.fields), join(path, 'opening'), list);
  if (settled.survey !== undefined)
    needAll(settled.survey, Object.keys(DOOR_FIELDS.survey.fields), join(path, 'survey'), list);
  if (settled.arch !== null) needAll(settled.arch, ['rise', 'flat'], join(path, 'arch'), list);
  if (list.faults.length + list.dropped > before) return null;
  const arch = settled.arch === null ? null : { kind: 'circular', ...(settled.arch as Tree) };
  return {
    ...settled,
    arch,
    ...(settled.survey === undefined ? {} : { survey: settled.survey as OpeningSurvey }),
  } as unknown as DoorSpec;
}

function over(below: Tree, above: Tree): Tree {
  const merged: Record<string, unknown> = { ...below };
  for (const [name, value] of Object.entries(above)) {
    if (value === undefined) continue;
    const shape: Shape | undefined = Object.hasOwn(DOOR_FIELDS, name)
      ? DOOR_FIELDS[name as keyof typeof DOOR_FIELDS]
      : undefined;
    const fieldByField = shape?.kind === 'group' && !shape.whole;
    merged[name] =
      fieldByField && isTree(value) ? { ...((merged[name] ?? {}) as Tree), ...defined(value) } : value;
  }
  return merged;
}

function defined(tree: Tree): Tree {
  return Object.fromEntries(Object.entries(tree).filter(([, value]) => value !== undefined));
}

function needAll(group: unknown, names: readonly string[], path: string, list: FaultList): void {
  // Where the group itself was refused, what it lacks is not told as well.
  if (list.faults.some((fault) => fault.path.startsWith(path))) return;
  for (const name of names)
    if (!isTree(group) || group[name] === undefined) report(list, join(path, name), 'required');
}
