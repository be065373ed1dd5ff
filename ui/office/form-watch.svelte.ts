import { SvelteSet } from 'svelte/reactivity';
import type { Told } from './tell-fault.ts';

/**
 * Which faults of a form are told yet: none in a field that nobody has come to, none in the one that is typed into, and
 * all once somebody has asked to save.
 */
export class FormWatch {
  tried = $state(false);
  /** The field that is typed into. */
  here = $state('');
  readonly #left = new SvelteSet<string>();

  constructor(tried: boolean) {
    this.tried = tried;
  }

  /** The focus has come to a field. */
  came(place: string): void {
    this.here = place;
  }

  /** The focus has left a field. */
  went(place: string): void {
    this.here = '';
    this.#left.add(place);
  }

  /** Is this fault to be told under its field? */
  tells({ place, typing }: Told): boolean {
    if (this.tried) return true;
    const typed = place === this.here || this.here.startsWith(`${place}.`);
    return !typed && (!typing || this.#left.has(place));
  }
}
