import { factsOf, STAGES, type StageKind } from './table.ts';

/** The ids of the stages that a stile has once for each end or mid rail. */
interface Numbered {
  'mitre-end': `mitre-${'bottom' | 'top' | `mid-${number}-${'lower' | 'upper'}`}`;
  notch: `notch-${'bottom' | 'top' | `mid-${number}`}`;
}

/** The id of a stage of this kind: as printed in plans and said in marks, for ever. */
export type StageId<K extends StageKind = StageKind> = K extends keyof Numbered ? Numbered[K] : K;

/** A stage's id, read. */
export interface ReadStage {
  readonly kind: StageKind;
  /** Of a stile's own end. */
  readonly end?: 'bottom' | 'top';
  /** Of a mid rail, counted from the bottom up, and which of its mitres. */
  readonly mid?: { readonly k: number; readonly side?: 'lower' | 'upper' };
}

const known = new Map<string, ReadStage | null>();
const MOST_KNOWN = 1000;

/** Reads a stage's id; null when there is no such stage. */
export function readStage(id: string): ReadStage | null {
  const before = known.get(id);
  if (before !== undefined) return before;
  const read = parse(id);
  if (known.size < MOST_KNOWN) known.set(id, read);
  return read;
}

/** The kind of a stage by its id; null when there is no such stage. */
export function kindOf(id: string): StageKind | null {
  return readStage(id)?.kind ?? null;
}

/** Is this a stage of that kind, by its id? */
export function isOfKind<K extends StageKind>(id: string, kind: K): id is StageId<K> {
  return kindOf(id) === kind;
}

function parse(id: string): ReadStage | null {
  const [, cut, end] = /^(mitre|notch)-(bottom|top)$/.exec(id) ?? [];
  if (end === 'bottom' || end === 'top') return { kind: cut === 'mitre' ? 'mitre-end' : 'notch', end };
  const mitre = /^mitre-mid-([1-9]\d*)-(lower|upper)$/.exec(id);
  if (mitre !== null)
    return {
      kind: 'mitre-end',
      mid: { k: Number(mitre[1]), side: mitre[2] === 'lower' ? 'lower' : 'upper' },
    };
  const notch = /^notch-mid-([1-9]\d*)$/.exec(id);
  if (notch !== null) return { kind: 'notch', mid: { k: Number(notch[1]) } };
  if (!Object.hasOwn(STAGES, id)) return null;
  const kind = id as StageKind;
  return kind === 'mitre-end' || kind === 'notch' ? null : { kind };
}

/** Is this stage one that the whole door passes, any live part standing for it? */
export function isDoorStage(id: string): boolean {
  const kind = kindOf(id);
  return kind !== null && factsOf(kind).of === 'door';
}

/** A yes or no of the table, asked of a stage by its id. */
export function stageIs(
  id: string,
  fact: 'gathers' | 'closes' | 'fits' | 'finishes' | 'arches' | 'grooves',
): boolean {
  const kind = kindOf(id);
  return kind !== null && factsOf(kind)[fact] === true;
}
