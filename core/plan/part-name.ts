/** A part's name as printed in plans, for ever. Panels and mid rails are numbered from the bottom up; a panel that is the only one is not. */
export type PartName =
  `stile-${'left' | 'right'}` | `rail-${'bottom' | 'top' | `mid-${number}`}` | 'panel' | `panel-${number}`;

/** A part's name, read: what it is, where it is in the door as seen from the front, and which one of several. */
export type ReadPart =
  | { readonly kind: 'stile'; readonly at: 'left' | 'right' }
  | { readonly kind: 'rail'; readonly at: 'bottom' | 'top' }
  | { readonly kind: 'rail'; readonly at: 'mid'; readonly k: number }
  | { readonly kind: 'panel'; readonly at: 'alone' }
  | { readonly kind: 'panel'; readonly at: 'numbered'; readonly k: number };

const known = new Map<string, ReadPart | null>();
const MOST_KNOWN = 1000;

/** Reads what may be a part's name; null when it is none. */
export function parsePart(name: string): ReadPart | null {
  const before = known.get(name);
  if (before !== undefined) return before;
  const read = parse(name);
  if (known.size < MOST_KNOWN) known.set(name, read);
  return read;
}

/** What a part is, by the name that a plan gives it. Throws where that is no part's name: a broken plan. */
export function readPart({ part }: { readonly part: PartName }): ReadPart {
  const read = parsePart(part);
  if (read === null) throw new Error(`no part is called ${JSON.stringify(part)}`);
  return read;
}

/** Is this text a part's name? */
export function isPartName(text: string): text is PartName {
  return parsePart(text) !== null;
}

/** The name of a panel: the only one of its door, or the k-th from the bottom. */
export function panelName(k: number, of: number): PartName {
  return of === 1 ? 'panel' : `panel-${k}`;
}

function parse(name: string): ReadPart | null {
  switch (name) {
    case 'stile-left':
      return { kind: 'stile', at: 'left' };
    case 'stile-right':
      return { kind: 'stile', at: 'right' };
    case 'rail-bottom':
      return { kind: 'rail', at: 'bottom' };
    case 'rail-top':
      return { kind: 'rail', at: 'top' };
    case 'panel':
      return { kind: 'panel', at: 'alone' };
  }
  const numbered = /^(rail-mid|panel)-([1-9]\d*)$/.exec(name);
  if (numbered === null) return null;
  const k = Number(numbered[2]);
  return numbered[1] === 'panel' ? { kind: 'panel', at: 'numbered', k } : { kind: 'rail', at: 'mid', k };
}
