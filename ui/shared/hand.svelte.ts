import { MediaQuery } from 'svelte/reactivity';

/**
 * The sizes at which screens held in a hand are laid out, each as the styles ask for it: a stylesheet cannot take them from
 * one place, so a test holds that it asks for no other.
 */
export const HAND_SIZES = {
  /** Smaller than a screen on a wall or a bench: one thing below the other, scrolled. */
  hand: '(max-width: 1023px), (max-height: 639px)',
  /** Of those, the ones with room for one column. */
  upright: '(max-width: 639px), (max-width: 1023px) and (min-height: 640px)',
  /** Of those, the ones with room for two, but lower than what stands in them. */
  lying: '(min-width: 640px) and (max-height: 639px)',
  /** The smallest: a phone, upright or lying. */
  phone: '(max-width: 639px), (max-height: 479px)',
  /** Of those, the ones that stand upright. */
  uprightPhone: '(max-width: 639px)',
  /** And the ones that lie. */
  lyingPhone: '(min-width: 640px) and (max-height: 479px)',
  /** A tablet that lies: laid out as on a wall, but with less room for what stands side by side. */
  tablet: '(min-width: 1024px) and (max-width: 1199px) and (min-height: 640px)',
  /** That, and all that is held in a hand. */
  narrow: '(max-width: 1199px), (max-height: 639px)',
} as const;

/** Is the screen now of one of these sizes? Where nothing can tell, it is not. */
class HandSize {
  readonly #query: MediaQuery | null;

  constructor(size: keyof typeof HAND_SIZES) {
    this.#query = typeof matchMedia === 'function' ? new MediaQuery(HAND_SIZES[size]) : null;
  }

  get now(): boolean {
    return this.#query?.current ?? false;
  }
}

export const hand = new HandSize('hand');
export const phone = new HandSize('phone');
