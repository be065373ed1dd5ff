/** What names an element on the wire (W3C WebDriver, section 12). */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';
const ENTER = '\uE007';

/** A page by the W3C's WebDriver, for an engine that has no other. */
export class WebDriver {
  readonly #session: string;

  private constructor(session: string) {
    this.#session = session;
  }

  /** Opens a window by a driver that listens here. */
  static async open(driver: string, capabilities: unknown): Promise<WebDriver> {
    const { sessionId } = (await asked('POST', `${driver}/session`, {
      capabilities: { alwaysMatch: capabilities },
    })) as { sessionId: string };
    return new WebDriver(`${driver}/session/${sessionId}`);
  }

  async open(address: string): Promise<void> {
    await asked('POST', `${this.#session}/url`, { url: address });
  }

  async address(): Promise<string> {
    return String(await asked('GET', `${this.#session}/url`));
  }

  /** Runs in the page a function that stands for itself; what it gives back has to be JSON. */
  async run<G extends unknown[], R>(what: (...given: G) => R, ...given: G): Promise<R> {
    const script = `return (${what.toString()})(...arguments)`;
    return (await asked('POST', `${this.#session}/execute/sync`, { script, args: given })) as R;
  }

  async click(selector: string): Promise<void> {
    await asked('POST', `${await this.#element(selector)}/click`, {});
  }

  /** Types into a field. */
  async fill(selector: string, text: string): Promise<void> {
    await asked('POST', `${await this.#element(selector)}/value`, { text });
  }

  /** Presses keys one after another, with no pause, and Enter. */
  async scan(text: string): Promise<void> {
    const actions = [...text, ENTER].flatMap((value) => [
      { type: 'keyDown', value },
      { type: 'keyUp', value },
    ]);
    await asked('POST', `${this.#session}/actions`, { actions: [{ type: 'key', id: 'scanner', actions }] });
  }

  async resize(width: number, height: number): Promise<void> {
    await asked('POST', `${this.#session}/window/rect`, { x: 0, y: 0, width, height });
  }

  async close(): Promise<void> {
    await asked('DELETE', this.#session);
  }

  async #element(selector: string): Promise<string> {
    const found = (await asked('POST', `${this.#session}/element`, {
      using: 'css selector',
      value: selector,
    })) as Record<string, string>;
    return `${this.#session}/element/${found[ELEMENT] ?? ''}`;
  }
}

async function asked(method: string, address: string, body?: unknown): Promise<unknown> {
  const answer = await fetch(address, {
    method,
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  const { value } = (await answer.json()) as { value: unknown };
  if (!answer.ok) throw new Error(`${method} ${new URL(address).pathname}: ${JSON.stringify(value)}`);
  return value;
}
