import type { Located } from '#core/marks/live-plan.ts';
import type { Mark } from '#core/marks/mark.ts';
import type { PlanStage } from '#core/plan/plan.ts';
import type { LiveJob } from '../hub/live.svelte.ts';
import type { AtPlace } from './places.ts';

/** A setup on the screen: this part, this stage, no other. */
export interface Setup extends AtPlace {
  readonly code: string;
  readonly job: LiveJob;
  readonly found: Located;
  readonly stage: PlanStage;
  /** When it, or the place that it is at, came on the screen, on the page's clock. */
  readonly since: number;
  /** From when on a tap on Done counts: later where the setup, or its next place, came up under a finger. */
  readonly liveFrom: number;
  /** Did it come up without having been asked for? */
  readonly unasked: boolean;
}

/** A sentence over the screen: its refusal code, what it says, and what to do next. */
export interface Message {
  readonly code: string;
  readonly text: string;
  readonly next: string;
  /** A banner leaves the screen below as it is. */
  readonly banner: boolean;
  /** Does it tell of a mark that was not taken? */
  readonly refused?: true;
  /** A sticker that is to be printed now. */
  readonly sticker?: { readonly job: string; readonly code: string };
}

/** The mark made last here, which can be taken back for a minute. */
export interface Last {
  readonly mark: Mark;
  readonly text: string;
  readonly next: string;
  readonly until: number;
}
