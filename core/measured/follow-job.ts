import { isTree, type Tree } from '../fields/read-shape.ts';
import type { Job } from '../job/job.ts';
import type { Length } from '../length/length.ts';
import { parseLength } from '../length/parse-length.ts';
import { typeLength } from '../length/type-length.ts';
import { SIZE_NAMES, type SizeName } from './measured.ts';
import { nominals } from './nominals.ts';

type Doors = Pick<Job, 'doors' | 'units'>;

/**
 * What was measured for a job, as a file has it, once its doors are ordered otherwise; both in the units of `now`. One
 * length stays one while they share one size; where they come to have several it is written as a list that says it of
 * those it was measured on: the sizes of `before`, or of all where that is not known. What is said of a size that no door
 * has now is let go.
 */
export function followJob(measured: Tree, before: Doors | null, now: Doors): Tree {
  const followed = SIZE_NAMES.flatMap((name): [string, unknown][] => {
    const said = measured[name];
    if (said === undefined) return [];
    const sizes = nominals(now, name);
    if (Array.isArray(said)) return [[name, kept(said, sizes, now)]];
    return [[name, sizes.length < 2 ? said : spread(said, name, sizes, before, now)]];
  });
  const { thickness: _thickness, grooveWidth: _grooveWidth, ...rest } = measured;
  return { ...Object.fromEntries(followed.filter(([, said]) => said !== undefined)), ...rest };
}

/** Those of a list that are of a size which a door has; undefined where none is. What cannot be read is left to be told. */
function kept(said: readonly unknown[], sizes: readonly Length[], { units }: Doors): unknown {
  const still = said.filter((each) => {
    const of = isTree(each) ? parseLength(each.of, units) : null;
    return of?.ok !== true || sizes.some((size) => size.equals(of.value));
  });
  return still.length === 0 ? undefined : still;
}

/** One length, said of each size that it was measured on. */
function spread(
  is: unknown,
  name: SizeName,
  sizes: readonly Length[],
  before: Doors | null,
  { units }: Doors,
): unknown {
  const was = before === null ? sizes : nominals(before, name);
  const still = sizes.filter((size) => was.some((each) => each.equals(size)));
  return still.length === 0 ? undefined : still.map((size) => ({ of: typeLength(size, units), is }));
}
