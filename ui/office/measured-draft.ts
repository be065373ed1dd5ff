import { isTree, type Tree } from '#core/job/read-shape.ts';

type Sizes = Readonly<Record<'thickness' | 'grooveWidth' | 'width', string>>;

/** What was measured so far for a job, a door of it ("" for all) or a part of that; empty where nothing was. */
export function measuredText(measured: Tree, door: string, part: string, name: keyof Sizes): string {
  const found = [...pathTo(door, part), name].reduce<unknown>(
    (tree, step) => (isTree(tree) ? tree[step] : undefined),
    measured,
  );
  return typeof found === 'string' || typeof found === 'number' ? String(found) : '';
}

/** The same with these sizes at that place; an empty one is taken away, and so is a place with nothing left. */
export function withMeasured(measured: Tree, door: string, part: string, sizes: Sizes): Tree {
  return changed(measured, pathTo(door, part), part === '' ? { ...sizes, width: '' } : sizes);
}

function pathTo(door: string, part: string): string[] {
  return door === '' ? [] : part === '' ? ['doors', door] : ['doors', door, 'parts', part];
}

function changed(tree: Tree, path: readonly string[], sizes: Sizes): Tree {
  const [step, ...rest] = path;
  if (step === undefined) {
    const typed = Object.entries(sizes).map(([name, size]) => [name, size.trim()] as const);
    return {
      ...without(tree, Object.keys(sizes)),
      ...Object.fromEntries(typed.filter(([, size]) => size !== '')),
    };
  }
  const below = changed(isTree(tree[step]) ? tree[step] : {}, rest, sizes);
  return Object.keys(below).length === 0 ? without(tree, [step]) : { ...tree, [step]: below };
}

function without(tree: Tree, names: readonly string[]): Tree {
  return Object.fromEntries(Object.entries(tree).filter(([name]) => !names.includes(name)));
}
