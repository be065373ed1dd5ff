import { Worker } from 'node:worker_threads';
import type { Language } from '#core/words/languages.ts';
import type { Said, Told } from './messages.ts';
import type { Task, TaskKind, Tasks, Telling } from './tasks.ts';

/** The most that a thread may hold of what it works with, in MB: what needs more fails alone. */
const MOST_HELD_MB = 1536;

type Given = Tasks[TaskKind]['gives'];

/** Where tasks are done, one after another. */
export interface Bench {
  do(task: Task, spoken: Language, telling: Telling): Promise<Given>;
  /** Ends at once, whatever is being done; that fails. Settles when it is over. */
  end(): Promise<unknown>;
}

/** A thread of the hub's that does tasks; `entry` is its built file. */
export class Thread implements Bench {
  readonly #worker: Worker;
  #number = 0;
  #doing: { readonly said: (said: Said) => void; readonly failed: (error: Error) => void } | null = null;
  #over: Error | null = null;

  constructor(entry: string) {
    this.#worker = new Worker(entry, {
      stdin: false,
      execArgv: [],
      resourceLimits: { maxOldGenerationSizeMb: MOST_HELD_MB },
    });
    // It does not keep the hub from ending.
    this.#worker.unref();
    this.#worker.on('message', (said: Said) => {
      if (said.number === this.#number) this.#doing?.said(said);
    });
    this.#worker.on('error', (error) => this.#ended(error));
    this.#worker.on('exit', () => this.#ended(new Error('the thread has ended')));
  }

  #ended(error: unknown): void {
    this.#over ??= error instanceof Error ? error : new Error(String(error));
    this.#doing?.failed(this.#over);
    this.#doing = null;
  }

  async do(task: Task, spoken: Language, { piece, progress }: Telling): Promise<Given> {
    if (this.#over !== null) throw this.#over;
    const number = (this.#number += 1);
    try {
      return await new Promise<Given>((done, failed) => {
        const said = (what: Said) => {
          if ('done' in what) done(what.done);
          else if ('failed' in what) failed(new Error(what.failed));
          else if ('piece' in what) piece(what.piece).then(() => this.#tell({ more: 1 }), failed);
          else progress(what.made, what.of).catch(failed);
        };
        this.#doing = { said, failed };
        this.#tell({ task, number, spoken });
      });
    } finally {
      this.#doing = null;
    }
  }

  #tell(told: Told): void {
    this.#worker.postMessage(told);
  }

  end(): Promise<unknown> {
    return this.#worker.terminate();
  }
}
