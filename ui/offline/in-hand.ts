/** Forms with something to save; what was chosen in one without typing would be gone too. */
const FORM = '[data-action^="save-"]';
/** A setup, or a sheet over the screen: it can be called up again. */
const SHOWN = '[data-code], [role="dialog"], [role="alertdialog"]';
const TOUCHES = ['pointerdown', 'pointerup', 'keydown', 'wheel', 'input'] as const;

/** What somebody at this screen is in the middle of, and since when nobody touched it. */
export class InHand {
  readonly #document: Document;
  readonly #typed = new Set<Element>();
  #touched = performance.now();

  constructor(target: Window) {
    this.#document = target.document;
    for (const name of TOUCHES)
      target.addEventListener(
        name,
        ({ type, target: into }) => {
          this.#touched = performance.now();
          if (type === 'input' && into instanceof Element) this.#typed.add(into);
        },
        { capture: true, passive: true },
      );
  }

  /** Milliseconds since somebody touched a key or the screen. */
  get quiet(): number {
    return performance.now() - this.#touched;
  }

  /** Stands here what somebody has written and nobody has kept? */
  get written(): boolean {
    for (const each of this.#typed) if (!each.isConnected) this.#typed.delete(each);
    return this.#typed.size > 0 || this.#document.querySelector(FORM) !== null;
  }

  /** Is something open that somebody may be looking at? */
  get open(): boolean {
    return this.#document.querySelector(SHOWN) !== null;
  }
}
