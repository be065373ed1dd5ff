import { z } from 'zod';
import type { DevToolsPipe } from './devtools-pipe.ts';

const target = z.object({ targetId: z.string(), type: z.string(), url: z.string() });
const created = z.object({ targetInfo: target });
const crashed = z.object({ targetId: z.string() });
const attached = z.object({ sessionId: z.string() });
const framed = z.object({
  frameTree: z.object({ frame: z.object({ unreachableUrl: z.string().optional() }) }),
});

export interface PageWatchOptions {
  /** The page died: is it to be loaded again? */
  readonly mayLoad: () => boolean;
  /** What the browser said against what it was asked for. */
  readonly failed: (error: unknown) => void;
}

/**
 * Keeps a full screen of one page: a page that dies, as where its process has no memory left, is loaded again, and every other
 * window or tab is closed as soon as it is there, whatever link or script asked for it.
 */
export class PageWatch {
  readonly #pipe: DevToolsPipe;
  readonly #options: PageWatchOptions;
  /** The one page; its id stays the same wherever it goes. */
  #page: string | null = null;

  constructor(pipe: DevToolsPipe, options: PageWatchOptions) {
    this.#pipe = pipe;
    this.#options = options;
    pipe.on('Target.targetCreated', (params) => {
      const read = created.safeParse(params);
      if (read.success) this.#created(read.data.targetInfo);
    });
    pipe.on('Target.targetCrashed', (params) => {
      const read = crashed.safeParse(params);
      if (read.success) this.#crashed(read.data.targetId);
    });
    this.#ask('Target.setDiscoverTargets', { discover: true });
  }

  /** Does the page show the browser's own words for an address that could not be loaded? */
  async isBroken(): Promise<boolean> {
    if (this.#page === null) return false;
    const sessionId = await this.#attach(this.#page);
    const { frameTree } = framed.parse(await this.#pipe.send('Page.getFrameTree', {}, sessionId));
    await this.#pipe.send('Target.detachFromTarget', { sessionId });
    return frameTree.frame.unreachableUrl !== undefined;
  }

  /** Asks the browser to end, and to write down first what it knows. */
  endBrowser(): void {
    this.#ask('Browser.close', {});
  }

  #created({ type, targetId }: z.infer<typeof target>): void {
    if (type !== 'page') return;
    this.#page ??= targetId;
    if (targetId !== this.#page) this.#ask('Target.closeTarget', { targetId });
  }

  #crashed(targetId: string): void {
    if (targetId !== this.#page || !this.#options.mayLoad()) return;
    this.#loadAgain(targetId).catch(this.#options.failed);
  }

  /** A page that has died does not answer to a reload: its address is gone to again. */
  async #loadAgain(targetId: string): Promise<void> {
    const { url } = created.parse(await this.#pipe.send('Target.getTargetInfo', { targetId })).targetInfo;
    const sessionId = await this.#attach(targetId);
    await this.#pipe.send('Page.navigate', { url }, sessionId);
    await this.#pipe.send('Target.detachFromTarget', { sessionId });
  }

  async #attach(targetId: string): Promise<string> {
    const answer = await this.#pipe.send('Target.attachToTarget', { targetId, flatten: true });
    return attached.parse(answer).sessionId;
  }

  #ask(method: string, params: object): void {
    this.#pipe.send(method, params).catch(this.#options.failed);
  }
}
