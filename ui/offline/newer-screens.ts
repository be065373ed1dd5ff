import { z } from 'zod';
import { SCREENS_NAMED } from '#core/api/screens-named.ts';
import type { InHand } from './in-hand.ts';

/** What is known of the page and its surroundings. */
export interface Around {
  /** Which build this page is of. */
  readonly own: string;
  readonly hand: Pick<InHand, 'quiet' | 'written' | 'open'>;
  readonly memory: Pick<Storage, 'getItem' | 'setItem'>;
  /** The page as the hub has it now; null where it does not come. */
  readonly page: () => Promise<string | null>;
  readonly reload: () => void;
}

const LOOK_MS = 1000;
/** So long nobody has touched a screen that is loaded anew with nothing open on it. */
const QUIET_MS = 3000;
/** The same where a setup or a sheet is open: whoever works by it has gone. */
const LEFT_MS = 10 * 60_000;
/** All screens of a shop hear of newer ones in the same second: each waits for up to so long. */
const SPREAD_MS = 8000;
/** A page that is the older one still after it was loaded anew tries again so often, each time after this long. */
const MOST_TRIES = 3;
const AGAIN_MS = 60_000;

const REMEMBERED = 'shoulderline.loaded-for';
const triedFor = z.object({ build: z.string(), tries: z.number(), at: z.number() });

/**
 * Loads this page anew once its hub has newer screens: when nobody is in the middle of anything, never for what somebody has
 * written, and only so often for one build. Marks that wait lie in the browser's database; the newer page sends them.
 */
export class NewerScreens {
  #around: Around | null = null;
  #wanted: string | null = null;
  #from = 0;
  /** The hub answered in a form that these screens do not know: they are of no more use. */
  #strange = false;
  #looking = false;
  #lookedAt = -AGAIN_MS;

  start(around: Around): void {
    this.#around = around;
    setInterval(() => void this.#look(), LOOK_MS);
  }

  /** The hub says which screens it has. */
  hear(build: string | undefined): void {
    if (this.#around === null || build === undefined || build === this.#wanted) return;
    this.#wanted = build === this.#around.own ? null : build;
    this.#from = performance.now() + Math.random() * SPREAD_MS;
  }

  /** An answer came in a form that is not known here. */
  strange(): void {
    this.#strange = true;
  }

  /** Is this page of another build than its hub's? What the hub refuses of it is kept for the page of that build. */
  get older(): boolean {
    return this.#wanted !== null;
  }

  async #look(): Promise<void> {
    const around = this.#around;
    if (around === null || this.#looking || !this.#isDue(around)) return;
    this.#looking = true;
    this.#lookedAt = performance.now();
    const there = SCREENS_NAMED.exec((await around.page()) ?? '')?.[1];
    this.#looking = false;
    // The one that is there is what a reload would give; somebody may have begun something meanwhile.
    if (there === undefined || there === around.own || !this.#isSafe(around)) return;
    const before = this.#tried(around);
    const tries = before?.build === there ? before.tries + 1 : 1;
    try {
      around.memory.setItem(REMEMBERED, JSON.stringify({ build: there, tries, at: Date.now() }));
    } catch {
      // A page that cannot remember what it was loaded anew for would do it for ever.
      return;
    }
    this.#around = null;
    around.reload();
  }

  /** Strange answers are looked into even where the hub's beats say nothing of its screens. */
  #isDue(around: Around): boolean {
    const now = performance.now();
    if (this.#wanted === null && !this.#strange) return false;
    if (now < this.#from || now - this.#lookedAt < (this.#wanted === null ? AGAIN_MS : LOOK_MS)) return false;
    const before = this.#tried(around);
    const again = before !== null && (this.#wanted === null || before.build === this.#wanted);
    if (again && (before.tries >= MOST_TRIES || Date.now() - before.at < AGAIN_MS)) return false;
    return this.#isSafe(around);
  }

  #isSafe({ hand }: Around): boolean {
    return !hand.written && hand.quiet > (hand.open && !this.#strange ? LEFT_MS : QUIET_MS);
  }

  #tried({ memory }: Around): z.infer<typeof triedFor> | null {
    try {
      return triedFor.safeParse(JSON.parse(memory.getItem(REMEMBERED) ?? 'null')).data ?? null;
    } catch {
      return null;
    }
  }
}

export const newerScreens = new NewerScreens();
