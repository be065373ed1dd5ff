import { randomUUID } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import { type Asking, type Way, wayOf, type WayTold } from './ways.ts';

/** As an EventSource waits where the hub has said nothing. */
const USUAL_RETRY_MS = 3000;
/** How often the page tries to send a mark that it keeps. */
const SEND_AGAIN_MS = 1000;

export interface StationTold extends WayTold {
  /** The blank that is milled here, and taken back, by turns. */
  readonly code: string;
  /** How it says from where on it wants to be told again: as our pages do, by the place of the last mark, or as any EventSource. */
  readonly resumes: 'by-place' | 'by-id';
}

/** A mark that was answered. */
export interface Answered {
  readonly id: string;
  readonly ms: number;
  /** Was it answered at the first try? */
  readonly atOnce: boolean;
}

/** The wall clock, in ms with fractions. */
const now = () => performance.timeOrigin + performance.now();

/** One screen as our pages behave: it listens, loads what it shows, marks, and comes back when the hub was gone. */
export class Station {
  readonly #way: Way;
  readonly #code: string;
  #turn = 0;
  #over = false;
  #retryMs = USUAL_RETRY_MS;
  readonly #resumes: StationTold['resumes'];
  #last: { readonly seq: string; readonly mark: string } | null = null;
  /** The jobs whose plans it has. */
  readonly #known = new Set<string>();
  #sending: Promise<unknown> = Promise.resolve();
  /** The numbers of the marks in the order in which they were heard. */
  readonly heard: number[] = [];
  /** When the first beat came of each stream that was opened. */
  readonly beats: number[] = [];
  /** When the last load after a stream was opened was done. */
  loaded = 0;
  /** What went wrong, in words. */
  readonly faults: string[] = [];
  #streams = 0;

  constructor(told: StationTold) {
    this.#way = wayOf(told);
    this.#code = told.code;
    this.#resumes = told.resumes;
  }

  /** Listens until it is closed. */
  async listen(): Promise<void> {
    while (!this.#over) {
      try {
        await this.#hearOne();
      } catch {
        // The hub is gone: the page asks how it is, and an EventSource comes back.
        void this.#get('/api/health').catch(() => undefined);
      }
      await pause(this.#retryMs);
    }
  }

  async #hearOne(): Promise<void> {
    const last = this.#last;
    const place = last !== null && this.#resumes === 'by-place' ? `?after=${last.seq}&mark=${last.mark}` : '';
    const { status, pieces } = await this.#way.ask({
      method: 'GET',
      path: `/api/events${place}`,
      headers: {
        accept: 'text/event-stream',
        ...(last !== null && this.#resumes === 'by-id' ? { 'last-event-id': last.seq } : {}),
      },
    });
    if (status !== 200) {
      this.faults.push(`a stream was answered with ${status}`);
      return;
    }
    this.#streams += 1;
    void this.#load();
    let rest = '';
    let beaten = false;
    for await (const piece of pieces) {
      const blocks = (rest + piece.toString()).split('\n\n');
      rest = blocks.pop() ?? '';
      for (const block of blocks) {
        const retry = /^retry: ?(\d+)$/m.exec(block)?.[1];
        if (retry !== undefined) this.#retryMs = Number(retry);
        const id = /^id: ?(\d+)$/m.exec(block)?.[1];
        const data = /^data: ?(.*)$/m.exec(block)?.[1] ?? '';
        if (id !== undefined && /^event: ?mark$/m.test(block)) {
          this.heard.push(Number(id));
          this.#last = { seq: id, mark: (JSON.parse(data) as { mark: { id: string } }).mark.id };
        }
        if (!beaten && /^event: ?beat$/m.test(block)) {
          beaten = true;
          this.beats.push(now());
          const { resumed } = (JSON.parse(data) as { greeting: { resumed: boolean } }).greeting;
          if (last !== null && !resumed) this.faults.push('a stream was not gone on with');
        }
      }
    }
  }

  /** What the page asks for when its stream is open: the jobs, of those that are new plan and file, of all the progress; the shop. */
  async #load(): Promise<void> {
    try {
      const { jobs } = JSON.parse(await this.#get('/api/jobs')) as { jobs: { id: string; left: number }[] };
      for (const { id } of jobs.filter(({ left }) => left > 0)) {
        const wanted = [`/api/jobs/${id}/progress`];
        if (!this.#known.has(id)) wanted.push(`/api/jobs/${id}`, `/api/jobs/${id}/file`);
        await Promise.all(wanted.map((path) => this.#get(path)));
        this.#known.add(id);
      }
      await this.#get('/api/shop');
      this.loaded = now();
    } catch {
      // It is asked for again with the next stream.
    }
  }

  async #get(path: string): Promise<string> {
    const { status, text } = await this.#whole({ method: 'GET', path });
    if (status !== 200) this.faults.push(`${path} was answered with ${status}`);
    return text;
  }

  async #whole(asking: Asking): Promise<{ readonly status: number; readonly text: string }> {
    const { status, pieces } = await this.#way.ask(asking);
    const all: Buffer[] = [];
    for await (const piece of pieces) all.push(piece);
    return { status, text: Buffer.concat(all).toString() };
  }

  /** Mills the blank, or takes that back; the same mark is sent until it is answered, and the next one after it. */
  mark(): Promise<Answered> {
    const body = {
      id: randomUUID(),
      code: this.#code,
      station: 'milling',
      stage: 'mill',
      mark: this.#turn % 2 === 0 ? 'done' : 'undo',
      at: new Date().toISOString(),
    };
    this.#turn += 1;
    const sent = this.#sending.then(() => this.#send(body.id, JSON.stringify(body)));
    this.#sending = sent.catch(() => undefined);
    return sent;
  }

  async #send(id: string, body: string): Promise<Answered> {
    for (let tries = 0; ; tries += 1) {
      const began = performance.now();
      try {
        const { status, text } = await this.#whole({ method: 'POST', path: '/api/marks', body });
        if (status !== 200) this.faults.push(`a mark was answered with ${status} ${text}`);
        return { id, ms: performance.now() - began, atOnce: tries === 0 };
      } catch {
        await pause(SEND_AGAIN_MS);
      }
    }
  }

  /** How many streams it has opened. */
  get streams(): number {
    return this.#streams;
  }

  close(): void {
    this.#over = true;
    this.#way.close();
  }
}
