import type { PaperPage } from './paper-page.ts';

/** A piece of the work that a paper is: the pages that came of it, if any, and how much of all the work is done. */
export interface PaperPiece {
  readonly pages: readonly PaperPage[];
  readonly done: number;
  readonly of: number;
}

/** A paper's work piece by piece, each done only when it is asked for. */
export type PaperWork = Iterable<PaperPiece>;
