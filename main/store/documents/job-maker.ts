import type { Fault } from '#core/fields/fault.ts';
import type { Units } from '#core/length/units.ts';
import type { PlanBytes } from './plan-bytes.ts';

/** The shop's tools for jobs in each of the units, as a job keeps them from the day it is saved. */
export type Profiles = Readonly<Record<Units, Readonly<Record<string, unknown>>>>;

/** What a save changes: the job's file, the sizes as they came out, or all of it to what an earlier revision had. */
export type Change =
  | { readonly kind: 'file'; readonly file: string }
  | { readonly kind: 'measured'; readonly measured: string }
  | { readonly kind: 'back'; readonly to: number; readonly past: string };

/** A job that is planned: its document's text, the sum of that, and its plan in bytes. Faults where it shows a plan of before. */
export interface MadeJob {
  readonly ok: true;
  readonly document: string;
  readonly hash: string;
  readonly plan: PlanBytes;
  readonly faults: readonly Fault[];
  /** The plan of before that it shows is nowhere: this is what can be reckoned. */
  readonly anyway: boolean;
  /** Every part with its code, as the answer to a save has it. */
  readonly parts: string;
}

export interface NotMade {
  readonly ok: false;
  readonly faults: readonly Fault[];
}

/** What comes of a change, each as text of an answer. */
export interface Comes {
  readonly finished: string;
  readonly disagreeing: number;
  readonly disagree: string;
  readonly lost: string;
  readonly cutOtherWay: number;
  readonly otherWay: string;
}

/** What can be asked of who makes jobs: with what, and what comes of it. Texts and bytes go from thread to thread at once. */
export interface Makes {
  /** A job's document with its plan; `last` are the lines of the plan that it showed before. */
  readonly plan: {
    readonly asked: { readonly document: string; readonly last: Uint8Array | null };
    readonly gives: MadeJob;
  };
  /** Are packed lines the whole plan of the job of this id? */
  readonly check: {
    readonly asked: { readonly id: string; readonly lines: Uint8Array };
    readonly gives: { readonly whole: boolean };
  };
  /** A new job; an id of null is the file's own. */
  readonly add: {
    readonly asked: {
      readonly file: string;
      readonly id: string | null;
      readonly added: string;
      readonly at: string;
      readonly profiles: Profiles;
    };
    readonly gives: MadeJob | NotMade;
  };
  /** A changed job, what was marked by other settings than it has now, and what comes of it. */
  readonly change: {
    readonly asked: {
      readonly before: string;
      readonly last: Uint8Array | null;
      readonly change: Change;
      readonly at: string;
      readonly by?: string | undefined;
      readonly profiles: Profiles;
      /** The marks of its doors, a line each. */
      readonly progress: string;
    };
    readonly gives: (MadeJob & { readonly comes: Comes }) | NotMade;
  };
  /** The same document once more after other marks on some of its doors: their lines, and the names of all of them. */
  readonly late: {
    readonly asked: {
      readonly before: string;
      readonly last: Uint8Array | null;
      /** One of the two documents has faults. */
      readonly whole: boolean;
      readonly document: string;
      readonly measuring: boolean;
      readonly progress: string;
    };
    readonly gives: { readonly document: string; readonly hash: string };
  };
}

export type MakeKind = keyof Makes;

/** One thing asked for. */
export type Make<K extends MakeKind = MakeKind> = {
  readonly [One in K]: { readonly make: One } & Makes[One]['asked'];
}[K];

/** How much it is, and until when it is wanted. */
export interface HowMuch {
  readonly doors: number;
  /** How many doors are planned: those of one mark are planned once. */
  readonly marks: number;
  readonly signal?: AbortSignal | undefined;
}

/** Makes jobs from what people write: plans, indexes, and what a change brings about. */
export interface JobMaker {
  makeJob<K extends MakeKind>(asked: Make<K>, how: HowMuch): Promise<Makes[K]['gives']>;
}
