import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { z } from 'zod';
import { freshData, removeData } from './hub-process.ts';
import { until } from './kiosk-process.ts';

const answer = z.object({ id: z.number(), result: z.unknown(), error: z.string().optional() });
const evaluated = z.object({ result: z.object({ value: z.unknown().optional() }) });

/** The built shell under a stand-in for Electron, whose one window is a real Chromium. */
export class Shell {
  readonly data = freshData();
  said = '';
  #asked = 0;
  readonly #child: ChildProcess;

  constructor() {
    const entry = join(import.meta.dirname, '..', '..', 'dist', 'shell', 'main.js');
    this.#child = spawn(
      process.execPath,
      ['--import', join(import.meta.dirname, 'electron-stand-in.mjs'), entry],
      {
        env: { ...process.env, SHOULDERLINE_DATA: this.data, SHOULDERLINE_PORT: '0' },
        stdio: ['pipe', 'pipe', 'inherit'],
      },
    );
    this.#child.stdout?.on('data', (chunk: Buffer) => (this.said += chunk.toString()));
  }

  /** What the stand-in told for the so-manieth time, by its first words; what follows them. */
  async told(words: string, times = 1): Promise<string> {
    return until(
      `“${words}”, ${times} times`,
      () =>
        this.said
          .split('\n')
          .filter((line) => line.startsWith(`STAND-IN ${words}`))
          [times - 1]?.slice(`STAND-IN ${words}`.length)
          .trim(),
      60,
    );
  }

  /** Asks the stand-in for something, and gives what it answers. */
  async ask(command: string, more: object = {}, seconds = 30): Promise<unknown> {
    this.#asked += 1;
    const id = this.#asked;
    this.#child.stdin?.write(`${JSON.stringify({ id, command, ...more })}\n`);
    const read = await until(`the answer to ${command}`, () => this.#answer(id), seconds);
    if (read.error !== undefined) throw new Error(read.error);
    return read.result;
  }

  #answer(id: number): z.infer<typeof answer> | null {
    for (const [, text] of this.said.matchAll(/^STAND-IN answer (.*)$/gm)) {
      const read = answer.parse(JSON.parse(text ?? ''));
      if (read.id === id) return read;
    }
    return null;
  }

  /** What an expression is worth in the window's page, a promise awaited. */
  async evaluate(expression: string): Promise<unknown> {
    // A page that has just crashed answers nothing.
    const params = { expression, awaitPromise: true, returnByValue: true, userGesture: true };
    return evaluated.parse(await this.ask('send', { method: 'Runtime.evaluate', params }, 5)).result.value;
  }

  /** Waits until an expression is worth this in the page, which may be between two loads. */
  async becomes(expression: string, value: unknown): Promise<void> {
    await until(`${expression} to become ${String(value)}`, async () =>
      (await this.evaluate(expression).catch(() => undefined)) === value ? true : null,
    );
  }

  /** The page is gone, as when its process dies. */
  async crash(): Promise<void> {
    await this.ask('send', { method: 'Page.crash' }, 1).catch(() => undefined);
  }

  get running(): boolean {
    return this.#child.exitCode === null;
  }

  /** Its exit code once it has ended. */
  async ended(): Promise<number | null> {
    if (this.running) await once(this.#child, 'exit');
    return this.#child.exitCode;
  }

  async close(): Promise<void> {
    if (this.running) {
      this.#child.stdin?.write('{"id":0,"command":"quit"}\n');
      await this.ended();
    }
    removeData(this.data);
  }
}
