import { isTree, type Tree } from '#core/fields/read-shape.ts';
import { parseLength } from '#core/length/parse-length.ts';
import type { Units } from '#core/length/units.ts';
import type { SizeName } from '#core/measured/measured.ts';

/** What is measured on a door, or on one part of it. */
type Sizes = Readonly<Record<'thickness' | 'grooveWidth' | 'length' | 'width', string>>;
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
  return changed(measured, pathTo(door, part), part === '' ? { ...sizes, length: '', width: '' } : sizes);
}

/** The same with this opening for one door; what is empty is that of its mark. */
export function withOpening(measured: Tree, door: string, opening: Opening): Tree {
  return changed(measured, [...pathTo(door, ''), 'opening'], opening);
}

/**
 * What was measured of the whole job, a text for each size that its doors are specified with; of a job with one size, or
 * with none that is known, one text. Empty where nothing was.
 */
export function jobSizeTexts(
  measured: Tree,
  name: SizeName,
  sizes: readonly string[],
  units: Units,
): string[] {
  const said = measured[name];
  if (!Array.isArray(said)) return atLeastOne(sizes).map(() => textAt(measured, [name]));
  const lines = said.filter(isTree);
  return atLeastOne(sizes).map((size) => {
    const line = lines.find(({ of }) => size === '' || isSame(of, size, units));
    return line === undefined ? '' : textAt(line, ['is']);
  });
}

/** The same with these texts: one length where the job has one size, else a line for each size that was measured. */
export function withJobSizes(
  measured: Tree,
  name: SizeName,
  sizes: readonly string[],
  texts: readonly string[],
): Tree {
  const rest = without(measured, [name]);
  if (sizes.length < 2) {
    const is = texts[0]?.trim() ?? '';
    return is === '' ? rest : { ...rest, [name]: is };
  }
  const each = sizes.map((of, k) => ({ of, is: texts[k]?.trim() ?? '' })).filter(({ is }) => is !== '');
  return each.length === 0 ? rest : { ...rest, [name]: each };
}

function atLeastOne(sizes: readonly string[]): readonly string[] {
  return sizes.length === 0 ? [''] : sizes;
}

/** Are both one length, however they are typed? */
function isSame(one: unknown, other: string, units: Units): boolean {
  const [a, b] = [parseLength(one, units), parseLength(other, units)];
  return a.ok && b.ok && a.value.equals(b.value);
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
