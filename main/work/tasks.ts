import type { PaperKind, PaperSize, PrintRequest } from '#core/api/prints-api.ts';
import type { Shop } from '#core/api/shop-api.ts';
import type { Saying } from '#core/plan/figure.ts';
import type { Language } from '#core/words/languages.ts';
import type { SymbolKind } from '#labels/pdf/symbol.ts';
import type { Paper, Refused } from '../printing/printer.ts';
import type { Make, MakeKind, Makes } from '../store/documents/job-maker.ts';
import type { PlanSource } from './plan-source.ts';

/** The shop's tools, in which its own stocks of stickers are. */
export type Tools = Pick<Shop, 'units' | 'profile'>;

/** What can be asked for of other threads: with what, and what comes of it. Of the first two the answer comes in pieces. */
export interface Tasks {
  readonly plan: {
    readonly asked: { readonly source: PlanSource; readonly language: Language; readonly why: boolean };
    readonly gives: null;
  };
  readonly door: {
    readonly asked: Tasks['plan']['asked'] & { readonly door: string; readonly mark: string };
    readonly gives: null;
  };
  /** Every door by name, with its codes and which of them are alike. */
  readonly doors: {
    readonly asked: { readonly source: PlanSource; readonly language: Language };
    readonly gives: null;
  };
  readonly stickers: {
    readonly asked: {
      readonly source: PlanSource;
      readonly tools: Tools;
      readonly stock: string;
      readonly from: number;
      readonly symbol?: SymbolKind | undefined;
      readonly codes?: readonly string[] | undefined;
    };
    readonly gives: StickersMade;
  };
  readonly papers: {
    readonly asked: {
      readonly source: PlanSource;
      /** Which kind of paper. */
      readonly of: PaperKind;
      readonly paper: PaperSize;
      readonly doors?: readonly string[] | undefined;
    };
    readonly gives:
      | { readonly ok: true; readonly pdf: Uint8Array }
      | { readonly ok: false; readonly fault: 'no-arch' }
      | { readonly ok: false; readonly fault: 'doors-unknown'; readonly doors: readonly string[] };
  };
  readonly print: {
    readonly asked: {
      /** None of a page to hold against a stock. */
      readonly source: PlanSource | null;
      readonly tools: Tools;
      readonly request: PrintRequest;
    };
    readonly gives: PrintMade | Refused;
  };
  /** A job's plan in bytes, and what is kept beside it. */
  readonly job: {
    readonly asked: { readonly asked: Make };
    readonly gives: Makes[MakeKind]['gives'];
  };
}

export type TaskKind = keyof Tasks;

/** One thing asked for. */
export type Task<K extends TaskKind = TaskKind> = {
  readonly [One in K]: { readonly kind: One } & Tasks[One]['asked'];
}[K];

/** Stickers as a PDF and what it does not say; or why there are none. */
export type StickersMade =
  | {
      readonly ok: true;
      readonly pdf: Uint8Array;
      readonly counts: { readonly parts: number; readonly stickers: number; readonly pages: number };
      /** The first of those that have two stickers, and how many have. */
      readonly doubled: { readonly count: number; readonly codes: readonly string[] };
      /** Likewise those for which the stock is too large. */
      readonly tooLarge: {
        readonly count: number;
        readonly parts: readonly {
          readonly code: string;
          readonly state: 'bears' | 'none';
          readonly fits: readonly string[];
        }[];
      };
    }
  | { readonly ok: false; readonly fault: 'stock-unknown'; readonly stocks: readonly string[] }
  | { readonly ok: false; readonly fault: 'codes-unknown'; readonly codes: readonly string[] }
  | { readonly ok: false; readonly fault: 'position' | 'symbol' | 'text'; readonly told: Saying };

/** A paper that is made, and which stickers are on it: a line each with its code and the sum of its figures. */
export interface PrintMade {
  readonly ok: true;
  readonly paper: Paper;
  readonly stickers: string;
  readonly stock: string;
}

/** What a task tells on its way; either may throw to stop it. */
export interface Telling {
  /** Takes a piece of the answer; settles when the next may come. */
  readonly piece: (bytes: Uint8Array) => Promise<void>;
  readonly progress: (made: number, of: number) => Promise<void>;
}
