import { isTree, type Tree } from '#core/fields/read-shape.ts';

type Sizes = Readonly<Record<'thickness' | 'grooveWidth' | 'width', string>>;
/** The opening of one door of several alike. */
type Opening = Readonly<Record<'width' | 'height', string>>;

/** What was measured so far for a job, a door of it ("" for all) or a part of that; empty where nothing was. */
export function measuredText(measured: Tree, door: string, part: string, name: keyof Sizes): string {
  return textAt(measured, [...pathTo(door, part), name]);
}

/** This door's own opening; empty where it has that of its mark. */
export function openingText(measured: Tree, door: string): Opening {
  const at = (name: string) => textAt(measured, [...pathTo(door, ''), 'opening', name]);
  return { width: at('width'), height: at('height') };
}

function textAt(measured: Tree, path: readonly string[]): string {
  const found = path.reduce<unknown>(
    (tree, step) => (isTree(tree) && Object.hasOwn(tree, step) ? tree[step] : undefined),
    measured,
  );
  return typeof found === 'string' || typeof found === 'number' ? String(found) : '';
}

/** The same with these sizes at that place; an empty one is taken away, and so is a place with nothing left. */
export function withMeasured(measured: Tree, door: string, part: string, sizes: Sizes): Tree {
  return changed(measured, pathTo(door, part), part === '' ? { ...sizes, width: '' } : sizes);
}

/** The same with this opening for one door; what is empty is that of its mark. */
export function withOpening(measured: Tree, door: string, opening: Opening): Tree {
  return changed(measured, [...pathTo(door, ''), 'opening'], opening);
}

function pathTo(door: string, part: string): string[] {
  return door === '' ? [] : part === '' ? ['doors', door] : ['doors', door, 'parts', part];
}

function changed(tree: Tree, path: readonly string[], sizes: Sizes | Opening): Tree {
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
