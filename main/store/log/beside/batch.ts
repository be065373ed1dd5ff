import type { Reached, ScannedLog } from '../read-log.ts';

/**
 * Entries of a log as they go from one thread to another: columns of numbers, which are handed over and not copied. A mark
 * of the usual form is numbers of texts in a list that both threads keep, and signs of a known length; any other entry is its
 * JSON as it stands in the log.
 */
export interface Batch {
  readonly count: number;
  readonly seqs: Float64Array<ArrayBuffer>;
  /** Where their lines begin in the log. */
  readonly places: Float64Array<ArrayBuffer>;
  /** FIELDS numbers for each. */
  readonly fields: Int32Array<ArrayBuffer>;
  /** The ids of the marks of the usual form, one behind the other. */
  readonly ids: Uint8Array<ArrayBuffer>;
  /** Instants, one behind the other; one that is the same as the one before stands there once. */
  readonly instants: Uint8Array<ArrayBuffer>;
  readonly json: Uint8Array<ArrayBuffer>;
  /** Texts that are new in the list, or a list begun anew. */
  readonly texts: readonly string[];
  readonly anew: boolean;
  /** How far the log was read with these. */
  readonly reached: Reached;
}

/** The columns of a mark's fields: which text of the list; RECEIVED and AT which instant. */
export const JOB = 0;
export const DOOR = 1;
export const PART = 2;
export const CODE = 3;
export const STATION = 4;
export const STAGE = 5;
export const MARK = 6;
export const BY = 7;
export const RECEIVED = 8;
export const AT = 9;
export const FIELDS = 10;

/** In JOB: this entry is JSON, which ends at END in `json`. In BY: nobody said who. */
export const NONE = -1;
export const END = 1;

/** What the thread that reads says: the next entries, with the last ones what came of it all; or why it failed. */
export type Said = { readonly batch: Batch; readonly done: ScannedLog | null } | { readonly failed: string };

/** What it is told: that it may hand on so many batches more. */
export interface More {
  readonly more: number;
}
