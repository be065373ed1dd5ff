import { isTree, type Tree } from '../fields/read-shape.ts';

/** One thing that a save changed: a field of the job file, of the doors of one mark where it has one. What was not there is left out. */
export interface Change {
  readonly mark?: string;
  /** Where it stands: "due", "defaults.stile.width"; of a door "opening.width", and "door" for all doors of the mark. */
  readonly field: string;
  readonly was?: string;
  readonly now?: string;
}

/** What a save changed: the first few things, and how many more there are. */
export interface WhatChanged {
  readonly changes: readonly Change[];
  readonly more: number;
}

/** What of a saved job a save may change: its file with sizes as they came out, and the tools that it is planned with. */
export interface SavedAs {
  readonly file: Tree;
  readonly measured: Tree;
  readonly profile: Tree;
}

/** So many changes are told of one save. */
export const MOST_CHANGES = 8;
const MOST_TEXT = 60;
/** In this order they are told; doors come after these, sizes as they came out and tools last. */
const OF_THE_JOB = ['units', 'job', 'due', 'ways', 'moisture', 'defaults'];

/** What is different between two saves of one job, by the texts that were typed. The order of doors alone is no change. */
export function whatChanged(before: SavedAs, after: SavedAs): WhatChanged {
  const all = [
    ...OF_THE_JOB.flatMap((name) => differences(name, before.file[name], after.file[name])),
    ...doorChanges(doorsIn(before.file), doorsIn(after.file)),
    ...differences('measured', before.measured, after.measured),
    ...(sameTree(before.profile, after.profile) ? [] : [{ field: 'profile' }]),
  ];
  return { changes: all.slice(0, MOST_CHANGES), more: Math.max(0, all.length - MOST_CHANGES) };
}

function doorChanges(before: ReadonlyMap<string, Tree>, after: ReadonlyMap<string, Tree>): Change[] {
  const gone = [...before].filter(([mark]) => !after.has(mark));
  const come = [...after].filter(([mark]) => !before.has(mark));
  return [
    ...gone.map(([mark, door]): Change => ({ mark, field: 'door', was: quantityOf(door) })),
    ...come.map(([mark, door]): Change => ({ mark, field: 'door', now: quantityOf(door) })),
    ...[...after].flatMap(([mark, door]) => {
      const was = before.get(mark);
      return was === undefined
        ? []
        : differences('', withQuantity(was), withQuantity(door)).map((change) => ({ mark, ...change }));
    }),
  ];
}

function doorsIn({ doors }: Tree): ReadonlyMap<string, Tree> {
  const all: readonly unknown[] = Array.isArray(doors) ? doors : [];
  return new Map(all.flatMap((door) => (isTree(door) ? [[textOf(door.mark), door] as const] : [])));
}

function withQuantity({ mark: _mark, ...door }: Tree): Tree {
  return { quantity: 1, ...door };
}

function quantityOf(door: Tree): string {
  return textOf(withQuantity(door).quantity);
}

function differences(path: string, before: unknown, after: unknown): Change[] {
  const [was, now] = [leavesOf(path, before), leavesOf(path, after)];
  return [...new Set([...was.keys(), ...now.keys()])].flatMap((field): Change[] => {
    const [old, fresh] = [was.get(field), now.get(field)];
    if (old === fresh) return [];
    return [
      { field, ...(old === undefined ? {} : { was: old }), ...(fresh === undefined ? {} : { now: fresh }) },
    ];
  });
}

/** Every text, number or word in what was typed, by its path; null is as good as nothing. */
function leavesOf(path: string, value: unknown, into = new Map<string, string>()): Map<string, string> {
  if (Array.isArray(value)) value.forEach((each: unknown, k) => leavesOf(`${path}[${k}]`, each, into));
  else if (isTree(value))
    for (const [name, each] of Object.entries(value))
      leavesOf(path === '' ? name : `${path}.${name}`, each, into);
  else if (value !== null && value !== undefined) into.set(path, textOf(value));
  return into;
}

function sameTree(a: Tree, b: Tree): boolean {
  const [was, now] = [leavesOf('', a), leavesOf('', b)];
  return was.size === now.size && [...was].every(([path, text]) => now.get(path) === text);
}

function textOf(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
    ? String(value).slice(0, MOST_TEXT)
    : '';
}
