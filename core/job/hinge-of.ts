import { isTree } from '../fields/read-shape.ts';

/** The side that a door is hung on, as seen from the front. */
export type Hinge = 'left' | 'right';

/**
 * The hinge side of the doors with this mark, from the job file that their plan was made from: the door's own, else the
 * job's, else left. Undefined where there is no such file or door.
 */
export function hingeOf(file: unknown, mark: string): Hinge | undefined {
  if (!isTree(file) || !Array.isArray(file.doors)) return undefined;
  const door: unknown = file.doors.find((each: unknown) => isTree(each) && each.mark === mark);
  if (!isTree(door)) return undefined;
  const said = door.hinge ?? (isTree(file.defaults) ? file.defaults.hinge : undefined);
  return said === 'right' ? 'right' : 'left';
}
