import type { JobLine } from '#core/api/jobs-api.ts';
import type { Beat, Trouble } from '#core/api/office-api.ts';
import type { AcceptedMark, Refusal } from '#core/marks/mark.ts';
import { newerScreens } from '../offline/newer-screens.ts';
import { ask } from './client.ts';
import { HubStream } from './hub-stream.ts';
import { HubTroubles } from './hub-troubles.ts';
import { JobsHere } from './jobs-here.svelte.ts';
import type { LiveJob } from './live-job.ts';
import { LoadTurns } from './load-turns.ts';
import { openOutbox } from './outbox.svelte.ts';
import { shop } from './shop.svelte.ts';

export type { LiveJob } from './live-job.ts';

/** So long the stream is waited for before all is asked for without it. */
const STREAM_FIRST_MS = 300;
/** The hub's own word of a mark comes at once; where it does not, what has happened to the job is asked for. */
const TOLD_LATE_MS = 5000;
/** A list that comes with another tag than was told is asked for again at most so often. */
const LIST_AGAIN_MS = 5000;

/** All current jobs, kept up to date by the hub's events. A finished one is opened when somebody asks for it. */
class Live {
  away = $state(false);
  /** What the hub has to tell everybody: lost, damaged, or in the way of recording. */
  troubles = $state.raw<readonly Trouble[]>([]);
  /** Counts what may change how the stations stand. */
  stationNews = $state(0);
  /** Counts how often this page came to hear of the hub anew. */
  connected = $state(0);
  readonly #here = new JobsHere();
  #started = false;
  /** Counts the times from which on no mark is missed: 0 before the stream is there. */
  #run = 0;
  /** The tag for which the list of jobs was last asked for anew. */
  #asksFor: { readonly tag: string; readonly at: number } | null = null;
  #shopAs: string | undefined;
  readonly #turns = new LoadTurns(() => {
    const run = this.#run;
    return this.#here.load(() => run > 0 && run === this.#run);
  });
  readonly #health = new HubTroubles((troubles) => {
    if (troubles.length + this.troubles.length > 0) this.troubles = troubles;
  });
  readonly #stream = new HubStream({
    begun: (resumed) => this.#begun(resumed),
    beat: (heard) => this.hearBeat(heard),
    mark: (accepted) => this.take(accepted),
    job: (id) => this.#look(id),
    print: () => (this.stickerNews += 1),
    stations: () => (this.stationNews += 1),
    shop: () => void shop.reload(),
    silent: () => (this.away = true),
    broken: () => void this.#broken(),
  });
  readonly outbox = openOutbox({
    shown: (kept) => this.#here.ahead.shown(kept),
    taken: (id, { replacement }) => {
      this.#here.ahead.taken(id, replacement);
      setTimeout(() => this.#lateFor(id), TOLD_LATE_MS);
    },
    dropped: (id) => this.#here.ahead.dropped(id),
    settled: (id) => {
      this.#here.ahead.taken(id, undefined);
      this.#lateFor(id);
    },
  });

  /** Every job that the hub has, finished ones too. */
  get lines(): readonly JobLine[] {
    return this.#here.lines;
  }
  set lines(lines) {
    this.#here.lines = lines;
  }
  get jobs(): ReadonlyMap<string, LiveJob> {
    return this.#here.jobs;
  }
  set jobs(jobs) {
    this.#here.jobs = jobs;
  }
  get loaded(): boolean {
    return this.#here.loaded;
  }
  set loaded(loaded) {
    this.#here.loaded = loaded;
  }
  /** Counts what may change which stickers are to be printed. */
  get stickerNews(): number {
    return this.#here.stickerNews;
  }
  set stickerNews(news) {
    this.#here.stickerNews = news;
  }

  /** Begins to listen; safe to call again. */
  start(): void {
    if (this.#started) return;
    this.#started = true;
    this.#stream.open();
    void this.outbox.open().catch(() => undefined);
    setTimeout(() => {
      if (this.#run === 0) this.#look();
    }, STREAM_FIRST_MS);
  }

  #begun(resumed: boolean): void {
    this.#turns.hopeful();
    shop.hopeful();
    this.connected += 1;
    this.stickerNews += 1;
    if (!resumed) {
      this.#run += 1;
      this.#here.sure.clear();
    }
    if (!resumed || !this.#turns.whole) this.#look();
    // Another page of this browser may have been closed with marks that it kept.
    void this.outbox.send();
  }

  /** The hub beats: whether it is well, and whether its jobs, its shop and its screens are still those that are known here. */
  hearBeat({ ok, jobs, shop: as, screens }: Beat): void {
    newerScreens.hear(screens);
    this.#health.hear(ok !== false);
    if (this.away && this.#turns.idle && !this.#turns.whole) this.#look();
    this.away = false;
    if (jobs !== undefined && jobs !== this.#here.tag && this.#turns.idle) this.#lookAtList(jobs);
    if (as !== undefined && as !== this.#shopAs) void shop.reload();
    this.#shopAs = as;
    if (this.outbox.waits) void this.outbox.send();
  }

  #lookAtList(tag: string): void {
    const now = performance.now();
    if (this.#asksFor?.tag === tag && now - this.#asksFor.at < LIST_AGAIN_MS) return;
    this.#asksFor = { tag, at: now };
    this.#look();
  }

  async #broken(): Promise<void> {
    const { kind } = await ask('GET /health');
    if (kind !== 'away') return;
    this.away = true;
    await this.#here.showKept();
  }

  /** Asks for what may be another; what waits for a job in the bin is sent once more. */
  #look(changed?: string): void {
    void this.reload(changed)
      .then(() => (this.outbox.binned.length > 0 ? this.outbox.sendBinned() : undefined))
      .catch(() => undefined);
  }

  /** A mark was answered, and no word of it came. */
  #lateFor(id: string): void {
    const job = this.#here.ahead.jobOf(id);
    if (job === undefined) return;
    this.#here.sure.delete(job);
    this.#look();
  }

  /** Asks for the list of jobs, and for what is not known of them. What does not come is asked for again after a moment. */
  reload(changed?: string): Promise<void> {
    if (changed !== undefined) this.#here.changed.add(changed);
    return this.#turns.next();
  }

  /** Opens a job that is not current. */
  async open(job: string): Promise<void> {
    if (this.jobs.has(job)) return;
    this.#here.asked.add(job);
    await this.reload();
  }

  /** Opens the job that a code belongs to, where the hub knows one. Is the part known now, or its job in the bin? */
  async bring(code: string): Promise<'known' | 'binned' | 'unknown'> {
    const answer = this.away ? null : await ask('GET /parts/:code', { params: { code } });
    if (answer?.kind === 'refused' && answer.refusal.code === ('binned' satisfies Refusal)) return 'binned';
    // Away, the hub cannot say it; this screen's own copy can.
    if (answer === null || answer.kind === 'away') return this.#here.inBin(code) ? 'binned' : 'unknown';
    if (answer.kind !== 'ok') return 'unknown';
    await this.open(answer.value.job.id);
    return this.find(code) === null ? 'unknown' : 'known';
  }

  /** Takes one more mark. Those that come close together are folded in together. */
  take(accepted: AcceptedMark): void {
    this.#here.take(accepted);
  }

  /** The part that a code stands or stood for. */
  find(code: string): ReturnType<JobsHere['find']> {
    return this.#here.find(code);
  }
}

export const live = new Live();
