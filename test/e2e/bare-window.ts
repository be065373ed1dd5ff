import { type CDPSession, Connection } from 'puppeteer-core';
import { NodeWebSocketTransport } from 'puppeteer-core/internal/node/NodeWebSocketTransport.js';

/**
 * A browser's page and what opens beside it, looked at without stopping anything. Playwright has the browser stop each new
 * window until it was looked into; one that is closed while it is stopped holds the page that opened it for ever, in Chromium.
 */
export class BareWindow {
  readonly #connection: Connection;
  readonly #session: CDPSession;
  /** Pages that were opened since, by id, and whether they are closed again. */
  readonly opened = new Map<string, 'open' | 'closed'>();

  private constructor(connection: Connection, session: CDPSession, page: string) {
    this.#connection = connection;
    this.#session = session;
    connection.on('Target.targetCreated', ({ targetInfo: { type, targetId } }) => {
      if (type === 'page' && targetId !== page) this.opened.set(targetId, 'open');
    });
    connection.on('Target.targetDestroyed', ({ targetId }) => {
      if (this.opened.has(targetId)) this.opened.set(targetId, 'closed');
    });
  }

  /** `address` is the browser's own: `ws://…/devtools/browser/…`. */
  static async lookInto(address: string): Promise<BareWindow> {
    const connection = new Connection(address, await NodeWebSocketTransport.create(address));
    const { targetInfos } = await connection.send('Target.getTargets');
    const page = targetInfos.find(({ type }) => type === 'page');
    if (page === undefined) throw new Error('the browser shows no page');
    const window = new BareWindow(connection, await connection.createSession(page), page.targetId);
    await connection.send('Target.setDiscoverTargets', { discover: true });
    return window;
  }

  /** What the page says to this script, which it takes for a person's own doing. */
  async run(script: string): Promise<unknown> {
    const { result } = await this.#session.send('Runtime.evaluate', {
      expression: script,
      userGesture: true,
      returnByValue: true,
    });
    return result.value;
  }

  /** A click of the mouse there. */
  async click(x: number, y: number): Promise<void> {
    for (const type of ['mousePressed', 'mouseReleased'] as const)
      await this.#session.send('Input.dispatchMouseEvent', { type, x, y, button: 'left', clickCount: 1 });
  }

  /** What the browser shows: pages, its own too, workers apart. */
  async pages(): Promise<string[]> {
    const { targetInfos } = await this.#connection.send('Target.getTargets');
    return targetInfos
      .filter(({ type }) => !type.includes('worker'))
      .map(({ type, url }) => `${type} ${url}`);
  }

  close(): void {
    this.#connection.dispose();
  }
}
