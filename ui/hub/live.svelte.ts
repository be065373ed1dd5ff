import type { JobLine } from '#core/api/jobs-api.ts';
import type { Beat, Trouble } from '#core/api/office-api.ts';
import { type Located, locate } from '#core/marks/live-plan.ts';
import type { AcceptedMark, Refusal } from '#core/marks/mark.ts';
import { foldMarks } from '#core/marks/progress.ts';
import { stageIs } from '#core/stages/stage-id.ts';
import { newerScreens } from '../offline/newer-screens.ts';
import { AheadMarks } from './ahead-marks.ts';
import { ArrivingMarks } from './arriving-marks.ts';
import { ask } from './client.ts';
import { GoneJobs } from './gone-jobs.ts';
import { HubStream } from './hub-stream.ts';
import { HubTroubles } from './hub-troubles.ts';
import { KeptJobs } from './kept-jobs.ts';
import { knowsCode, liveAgain, type LiveJob, toKeep } from './live-job.ts';
import { loadJobs } from './load-jobs.ts';
import { openOutbox } from './outbox.svelte.ts';
import { shop } from './shop.svelte.ts';
import { TryAgain } from './try-again.ts';

export type { LiveJob } from './live-job.ts';

/** So long the stream is waited for before all is asked for without it. */
const STREAM_FIRST_MS = 300;
/** How long after a mark the copy in the browser is brought up to date. */
const COPY_MS = 2000;
/** The hub's own word of a mark comes at once; where it does not, what has happened to the job is asked for. */
const TOLD_LATE_MS = 5000;
/** A list that comes with another tag than was told is asked for again at most so often. */
const LIST_AGAIN_MS = 5000;

/** All current jobs, kept up to date by the hub's events. A finished one is opened when somebody asks for it. */
class Live {
  /** Every job that the hub has, finished ones too. */
  lines = $state.raw<readonly JobLine[]>([]);
  jobs = $state.raw<ReadonlyMap<string, LiveJob>>(new Map());
  loaded = $state(false);
  away = $state(false);
  /** What the hub has to tell everybody: lost, damaged, or in the way of recording. */
  troubles = $state.raw<readonly Trouble[]>([]);
  /** Counts what may change which stickers are to be printed: other plans, spoiled blanks, finished doors, prints. */
  stickerNews = $state(0);
  #started = false;
  /** Counts the times from which on no mark is missed: 0 before the stream is there. */
  #run = 0;
  /** Did all come the last time? */
  #whole = false;
  #waiting = 0;
  #reloading: Promise<void> = Promise.resolve();
  /** The tag of the list of jobs that is known here, and the one for which it was last asked for anew. */
  #listed: string | undefined;
  #asksFor: { readonly tag: string; readonly at: number } | null = null;
  #shopAs: string | undefined;
  #copying: ReturnType<typeof setTimeout> | null = null;
  readonly #asked = new Set<string>();
  /** Jobs that were told as changed and did not come whole since. */
  readonly #changed = new Set<string>();
  /** Jobs of whose marks none was missed since they were asked for. */
  readonly #sure = new Set<string>();
  readonly #again = new TryAgain(() => this.reload());
  readonly #keptJobs = new KeptJobs();
  readonly #gone = new GoneJobs(this.#keptJobs);
  readonly #ahead = new AheadMarks((touched) => {
    this.jobs = new Map(
      [...this.jobs].map(([id, job]) => [id, touched.has(id) ? this.#withAhead(job) : job]),
    );
  });
  readonly #arriving = new ArrivingMarks((marks) => this.#fold(marks));
  readonly #health = new HubTroubles((troubles) => {
    if (troubles.length + this.troubles.length > 0) this.troubles = troubles;
  });
  readonly #stream = new HubStream({
    begun: (resumed) => this.#begun(resumed),
    beat: (heard) => this.hearBeat(heard),
    mark: (accepted) => this.take(accepted),
    job: (id) => this.#look(id),
    print: () => (this.stickerNews += 1),
    shop: () => void shop.reload(),
    silent: () => (this.away = true),
    broken: () => void this.#broken(),
  });
  readonly outbox = openOutbox({
    shown: (kept) => this.#ahead.shown(kept),
    taken: (id, { replacement }) => {
      this.#ahead.taken(id, replacement);
      setTimeout(() => this.#lateFor(id), TOLD_LATE_MS);
    },
    dropped: (id) => this.#ahead.dropped(id),
  });

  /** Begins to listen; safe to call again. */
  start(): void {
    if (this.#started) return;
    this.#started = true;
    this.#stream.open();
    void this.outbox.open().catch(() => undefined);
    setTimeout(() => {
      if (this.#run === 0) void this.reload().catch(() => undefined);
    }, STREAM_FIRST_MS);
  }

  #begun(resumed: boolean): void {
    this.#again.came();
    this.stickerNews += 1;
    if (!resumed) {
      this.#run += 1;
      this.#sure.clear();
    }
    if (!resumed || !this.#whole) this.#look();
  }

  /** The hub beats: whether it is well, and whether its jobs and its shop are still those that are known here. */
  hearBeat({ ok, jobs, shop: as, screens }: Beat): void {
    newerScreens.hear(screens);
    this.#health.hear(ok !== false);
    if (this.away && !this.#whole) this.#look();
    this.away = false;
    if (jobs !== undefined && jobs !== this.#listed && this.#waiting === 0) this.#lookAtList(jobs);
    if (as !== undefined && as !== this.#shopAs) void shop.reload();
    this.#shopAs = as;
    if (this.outbox.kept.some(({ refused }) => refused === undefined)) void this.outbox.send();
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
    await this.#fromKeptJobs();
  }

  /** Asks for what may be another; what waits for a job in the bin is sent once more. */
  #look(changed?: string): void {
    void this.reload(changed)
      .then(() => (this.outbox.binned.length > 0 ? this.outbox.sendBinned() : undefined))
      .catch(() => undefined);
  }

  /** A mark was answered, and no word of it came. */
  #lateFor(id: string): void {
    const job = this.#ahead.jobOf(id);
    if (job === undefined) return;
    this.#sure.delete(job);
    void this.reload().catch(() => undefined);
  }

  /**
   * Asks for the list of jobs, and for what is not known of them. One after another. What does not come is asked for again
   * after a moment.
   */
  reload(changed?: string): Promise<void> {
    if (changed !== undefined) this.#changed.add(changed);
    this.#waiting += 1;
    const turn = this.#reloading.then(async () => {
      this.#whole = false;
      try {
        this.#whole = await this.#reload();
      } finally {
        this.#waiting -= 1;
        if (this.#whole) this.#again.came();
        else this.#again.missed();
      }
    });
    this.#reloading = turn.catch(() => undefined);
    return turn;
  }

  /** Did all come? */
  #reload(): Promise<boolean> {
    const answered = this.#ahead.answered();
    const run = this.#run;
    const before = this.jobs;
    return this.#arriving.noted(async (came) => {
      const known = { jobs: before, asked: this.#asked, changed: this.#changed, sure: this.#sure };
      const loaded = await loadJobs(known, (lines) => (this.lines = lines));
      if (loaded === null) return false;
      const { lines, jobs, fresh, tag, whole } = loaded;
      this.#listed = tag ?? this.#listed;
      if (run === this.#run && run > 0) for (const id of fresh) this.#sure.add(id);
      this.#ahead.caughtUp(
        (each) => answered.has(each) && (fresh.has(each.kept.job) || !jobs.has(each.kept.job)),
      );
      const now = [...jobs].map(([id, job]): [string, LiveJob] => {
        const confirmed = fresh.has(id)
          ? foldMarks(job.confirmed, came)
          : (this.jobs.get(id)?.confirmed ?? job.confirmed);
        return [id, { ...job, confirmed }];
      });
      this.jobs = new Map(now);
      this.jobs = new Map(now.map(([id, job]) => [id, this.#withAhead(job)]));
      this.loaded = true;
      this.stickerNews += 1;
      const looked = await this.#gone.look(new Set(lines.map(({ id }) => id)), before);
      this.#copy();
      return whole && looked;
    });
  }

  /** With the hub away from the beginning, shows the jobs as they were when it was last here. */
  async #fromKeptJobs(): Promise<void> {
    const all = await this.#keptJobs.all().catch(() => []);
    if (this.loaded || all.length === 0) return;
    this.#gone.take(all.flatMap((each) => (each.binned === true ? [liveAgain(each)] : [])));
    const kept = all.filter((each) => each.binned !== true);
    this.jobs = new Map(kept.map((each) => [each.line.id, this.#withAhead(liveAgain(each))]));
    this.lines = kept.map(({ line }) => line);
    this.loaded = true;
  }

  /** Opens a job that is not current. */
  async open(job: string): Promise<void> {
    if (this.jobs.has(job)) return;
    this.#asked.add(job);
    await this.reload();
  }

  /** Opens the job that a code belongs to, where the hub knows one. Is the part known now, or its job in the bin? */
  async bring(code: string): Promise<'known' | 'binned' | 'unknown'> {
    const answer = this.away ? null : await ask('GET /parts/:code', { params: { code } });
    if (answer?.kind === 'refused' && answer.refusal.code === ('binned' satisfies Refusal)) return 'binned';
    // Away, the hub cannot say it; this screen's own copy can.
    if (answer === null || answer.kind === 'away') return this.#gone.has(code) ? 'binned' : 'unknown';
    if (answer.kind !== 'ok') return 'unknown';
    await this.open(answer.value.job.id);
    return this.find(code) === null ? 'unknown' : 'known';
  }

  /** Brings the copy in the browser's database up to date. */
  #copy(): void {
    if (this.#copying !== null) clearTimeout(this.#copying);
    this.#copying = null;
    const binned = this.#gone.binned.map((job) => ({ ...toKeep(job), binned: true as const }));
    this.#keptJobs.keep([...[...this.jobs.values()].map(toKeep), ...binned]).catch(() => undefined);
  }

  /** Takes one more mark. Those that come close together are folded in together. */
  take(accepted: AcceptedMark): void {
    this.#arriving.take(accepted);
  }

  #fold(arrived: readonly AcceptedMark[]): void {
    const ids = new Set(arrived.map(({ mark }) => mark.id));
    this.#ahead.caughtUp(({ kept }) => ids.has(kept.mark.id));
    const jobs = new Map(this.jobs);
    for (const id of new Set(arrived.map(({ job }) => job))) {
      const job = jobs.get(id);
      if (job === undefined) continue;
      jobs.set(id, this.#withAhead({ ...job, confirmed: foldMarks(job.confirmed, arrived) }));
    }
    this.jobs = jobs;
    if (arrived.some(({ mark }) => mark.mark === 'spoiled' || stageIs(mark.stage, 'finishes')))
      this.stickerNews += 1;
    this.#copying ??= setTimeout(() => this.#copy(), COPY_MS);
  }

  /** A job with this screen's own marks on top. */
  #withAhead(job: LiveJob): LiveJob {
    const known = [...this.jobs.values()].reduce((most, { confirmed }) => Math.max(most, confirmed.seq), 0);
    return this.#ahead.on(job, known);
  }

  /** The part that a code stands or stood for. */
  find(code: string): { readonly job: LiveJob; readonly found: Located } | null {
    for (const job of this.jobs.values()) {
      if (!knowsCode(job, code)) continue;
      const found = locate(job.index, job.progress, code);
      if (found !== null) return { job, found };
    }
    return null;
  }
}

export const live = new Live();
