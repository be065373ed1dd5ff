import type { FigureTable, Saying } from '../plan/figure.ts';
import type { WordKey } from '../words/say.ts';

/** The key of a fault's sentence. */
export type FaultKey = Extract<WordKey, `fault.${string}`>;

/** The same without its family: the code, and behind a point which of its sentences where it has several. */
export type FaultId = FaultKey extends infer Key ? (Key extends `fault.${infer Id}` ? Id : never) : never;

/** What stops a plan: where in the input, a stable code, and the key and figures of its sentence. */
export interface Fault extends Saying {
  readonly path: string;
  readonly code: string;
  readonly words: FaultKey;
  /** Lengths as they are typed in the job's units. */
  readonly figures: FigureTable;
}

/** A fault in words. */
export interface PrintedFault {
  readonly path: string;
  readonly code: string;
  readonly message: string;
}

/** A fault by its sentence; its code is that sentence's, where it is not given. */
export function faultOf(
  path: string,
  id: FaultId,
  figures: FigureTable = {},
  code: string = id.split('.', 1)[0] ?? id,
): Fault {
  return { path, code, words: `fault.${id}`, figures };
}

/** A value, or every fault that kept it from being made. */
export type Result<T, F = readonly Fault[]> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: F };
