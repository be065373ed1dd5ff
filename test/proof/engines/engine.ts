/** An element that can be seen: its words, and what stands in its tag. */
export interface Seen {
  readonly text: string;
  readonly attributes: Readonly<Record<string, string>>;
}

/** A browser as whoever stands before it uses it. */
export interface Engine {
  /** Loads a page. */
  open(address: string): Promise<void>;
  /** Where it is. */
  address(): Promise<string>;
  /** Types a text and Enter as fast as a scanner, wherever the focus is. */
  scan(text: string): Promise<void>;
  /** Types into a field. */
  fill(selector: string, text: string): Promise<void>;
  click(selector: string): Promise<void>;
  /** What is seen of all that the selector finds, in the page's order. */
  see(selector: string): Promise<readonly Seen[]>;
  /** How the first that the selector finds is drawn, as the engine reads the style sheet; empty where there is none. */
  style(selector: string, property: string): Promise<string>;
  /** The errors and warnings that its console was given since the beginning, exceptions that nobody caught, and what the policy forbade. */
  complaints(): Promise<readonly string[]>;
  /** A picture of the page, as PNG. */
  picture(): Promise<Uint8Array>;
}

/** How an engine is started. */
export interface EngineKind {
  readonly name: string;
  /** What it needs and this machine lacks, as packages of Debian. */
  lacking(): readonly string[];
  /** Starts it, until the test has ended, with no memory of before; it trusts this authority (a certificate as PEM) besides those of its own. */
  start(authority: string | null): Promise<Engine>;
}

/** The window, in dots. */
export const SIZE = { width: 1280, height: 800 } as const;

/** Runs in the page, whichever engine it is in, so it stands for itself. */
export function seenInPage(selector: string): Seen[] {
  return [...document.querySelectorAll<HTMLElement>(selector)]
    .filter((element) => element.getClientRects().length > 0)
    .map((element) => ({
      text: element.innerText,
      attributes: Object.fromEntries([...element.attributes].map(({ name, value }) => [name, value])),
    }));
}

/** Runs in the page too. */
export function styleInPage([selector, property]: readonly [string, string]): string {
  const [element] = document.querySelectorAll(selector);
  return element === undefined ? '' : getComputedStyle(element).getPropertyValue(property);
}
