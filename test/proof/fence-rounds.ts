import { type ChildProcess, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { builtEntry } from './built-entry.ts';
import { type Blank, check, everyMark, jobOf } from './kill-rounds.ts';

/** Builds the hub of this proof; gives the path of what is run. */
export function buildFenceHub(): Promise<string> {
  return builtEntry('fence-hub');
}

/** A hub in a process: where it listens, or why it did not start. */
export interface Running {
  readonly url: string;
  readonly refused: string | null;
  /** Of the hub itself, not of what started it. */
  readonly pid: number;
  /** Everything that it has said. */
  readonly said: () => string;
  readonly exited: Promise<number | null>;
  readonly kill: (signal: NodeJS.Signals) => void;
}

/** Starts one; `through` is what it is started by ("unshare", its options), `env` goes over this process's own. */
export async function start(
  entry: string,
  data: string,
  through: readonly string[] = [],
  env: Readonly<Record<string, string>> = {},
): Promise<Running> {
  const [program, ...args] = [...through, process.execPath, entry];
  const child: ChildProcess = spawn(program, args, {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, ...env, SHOULDERLINE_DATA: data },
  });
  let said = '';
  const exited = new Promise<number | null>((ended) => child.once('exit', (code) => ended(code)));
  const told = new Promise<void>((done) =>
    child.stdout?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      if (/^(LISTENING|REFUSED)/m.test(said)) done();
    }),
  );
  await Promise.race([told, exited]);
  const url = /LISTENING (\S+)/.exec(said)?.[1] ?? '';
  return {
    url,
    refused: url === '' ? said : null,
    pid: child.pid ?? 0,
    said: () => said,
    exited,
    kill: (signal) => void child.kill(signal),
  };
}

/** An answered mark: when it was asked for and when it was answered, by this process's clock. */
interface Answered {
  readonly id: string;
  readonly asked: number;
}

/** Clients that mark at a hub, over and over, until they are told to end or it answers otherwise than with 200. */
export class Clients {
  readonly answered: Answered[] = [];
  readonly sent: string[] = [];
  readonly statuses = new Map<number, number>();
  #ending = false;
  readonly #working: Promise<void>[];

  constructor(url: string, blanks: readonly Blank[], count = 4) {
    this.#working = Array.from({ length: count }, (_, k) =>
      this.#work(
        url,
        blanks.filter((_blank, at) => at % count === k),
      ),
    );
  }

  async enough(marks: number): Promise<void> {
    const end = performance.now() + 20_000;
    while (this.answered.length < marks && performance.now() < end) await pause(2);
    if (this.answered.length < marks) throw new Error(`only ${this.answered.length} marks were answered`);
  }

  async end(): Promise<void> {
    this.#ending = true;
    await Promise.all(this.#working);
  }

  async #work(url: string, blanks: readonly Blank[]): Promise<void> {
    for (let k = 0; !this.#ending; k += 1) {
      const blank = blanks[(k >> 1) % blanks.length];
      const [first] = blank?.stages ?? [];
      const id = randomUUID();
      this.sent.push(id);
      const asked = performance.now();
      const status = await post(url, {
        id,
        code: blank?.code,
        station: first?.station,
        stage: first?.stage,
        mark: k % 2 === 0 ? 'done' : 'undo',
        at: new Date().toISOString(),
      });
      this.statuses.set(status, (this.statuses.get(status) ?? 0) + 1);
      if (status === 200) this.answered.push({ id, asked });
      // What another left half done is refused once; whoever is not taken any more rests a little.
      else if (status !== 409) await pause(5);
      if (status === 0) return;
    }
  }
}

/** The status of the answer; 0 where there was none. */
async function post(url: string, mark: object): Promise<number> {
  try {
    const response = await fetch(`${url}/api/marks`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(mark),
    });
    await response.arrayBuffer();
    return response.status;
  } catch {
    return 0;
  }
}

/** What is known of a folder over all rounds: which marks were answered, and which were sent. */
export class Ledger {
  readonly #answered = new Set<string>();
  readonly #sent = new Set<string>();

  take(clients: Clients): void {
    for (const { id } of clients.answered) this.#answered.add(id);
    for (const id of clients.sent) this.#sent.add(id);
  }

  get answered(): number {
    return this.#answered.size;
  }

  /** Every answered mark is told by this hub, once and in order. */
  async hold(hub: Pick<Running, 'url'>, round: number): Promise<void> {
    check(await everyMark(hub), this.#answered, this.#sent, round);
  }
}

/** Nothing that the first was asked after the second listened was answered with 200. */
export function onlyOneAnswers(first: Clients, secondListened: number, round: number): void {
  const late = first.answered.filter(({ asked }) => asked > secondListened);
  if (late.length > 0) throw new Error(`round ${round}: two answered: ${late.length} marks by the first one`);
}

export async function blanksOf(hub: Pick<Running, 'url'>): Promise<Blank[]> {
  return jobOf(hub);
}

export function removeLocks(data: string): void {
  for (const name of readdirSync(data)) if (name.startsWith('lock-')) rmSync(join(data, name));
}
