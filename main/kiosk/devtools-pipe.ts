import { EventEmitter } from 'node:events';
import type { Readable, Writable } from 'node:stream';
import { z } from 'zod';

const message = z.object({
  id: z.number().optional(),
  method: z.string().optional(),
  params: z.unknown().optional(),
  result: z.unknown().optional(),
  error: z.object({ message: z.string() }).optional(),
});

interface Waiting {
  readonly done: (result: unknown) => void;
  readonly failed: (error: Error) => void;
}

/**
 * The DevTools protocol (chromedevtools.github.io/devtools-protocol) over a browser's pipe, as `--remote-debugging-pipe` opens
 * it: a message is JSON, ended by a zero byte. Whatever happens in the browser is told by the name of its event.
 */
export class DevToolsPipe {
  readonly #to: Writable;
  readonly #events = new EventEmitter();
  readonly #waiting = new Map<number, Waiting>();
  #asked = 0;
  #rest = '';

  constructor(to: Writable, from: Readable) {
    this.#to = to;
    // A browser that ends leaves a broken pipe, which its own end tells of.
    to.on('error', () => undefined);
    from.on('error', () => undefined);
    from.setEncoding('utf8');
    from.on('data', (text: string) => this.#hear(text));
    from.on('close', () => {
      for (const { failed } of this.#waiting.values()) failed(new Error('the browser has ended'));
      this.#waiting.clear();
    });
  }

  /** Tells of an event of this name, with what came with it. */
  on(name: string, listen: (params: unknown) => void): void {
    this.#events.on(name, listen);
  }

  /** Asks for something, of the browser or of a page's session. Rejects with what the browser says against it. */
  send(method: string, params: object = {}, sessionId?: string): Promise<unknown> {
    this.#asked += 1;
    const id = this.#asked;
    return new Promise((done, failed) => {
      this.#waiting.set(id, { done, failed });
      this.#to.write(`${JSON.stringify({ id, method, params, sessionId })}\0`);
    });
  }

  #hear(text: string): void {
    const whole = (this.#rest + text).split('\0');
    this.#rest = whole.pop() ?? '';
    for (const each of whole) {
      const read = message.safeParse(parsed(each));
      if (read.success) this.#take(read.data);
    }
  }

  #take({ id, method, params, result, error }: z.infer<typeof message>): void {
    if (method !== undefined) this.#events.emit(method, params);
    if (id === undefined) return;
    const waiting = this.#waiting.get(id);
    this.#waiting.delete(id);
    if (error === undefined) waiting?.done(result);
    else waiting?.failed(new Error(error.message));
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
