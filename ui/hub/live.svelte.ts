import { stageIs } from '#core/stages/stage-id.ts';
import { acceptedMark } from '#core/api/marks-api.ts';
import { jobEvent, type JobLine } from '#core/api/jobs-api.ts';
import { indexParts, type Located, locate, type PartIndex } from '#core/marks/live-plan.ts';
import type { AcceptedMark, JobProgress, Refusal } from '#core/marks/mark.ts';
import { emptyProgress, foldMarks, own } from '#core/marks/progress.ts';
import type { AsMarked } from '#core/measured/as-marked.ts';
import type { Plan } from '#core/plan/plan.ts';
import { beat, type Trouble } from '#core/api/office-api.ts';
import { ask } from './client.ts';
import { type KeptJob, KeptJobs } from './kept-jobs.ts';
import type { Kept } from './kept-marks.ts';
import { shop } from './shop.svelte.ts';
import { planByDoor } from './plan-by-door.ts';
import { openOutbox } from './outbox.svelte.ts';
import { TryAgain } from './try-again.ts';

/** A job as this screen knows it. The plan carries the codes of the first blanks; replacements are in the progress. */
export interface LiveJob {
  readonly line: JobLine;
  readonly plan: Plan;
  readonly index: PartIndex;
  /** The job file as the office saved it; undefined when the hub did not give it. */
  readonly file: unknown;
  /** Settings that something was marked by and that are others since. */
  readonly asMarked: readonly AsMarked[];
  /** What the hub has said. */
  readonly confirmed: JobProgress;
  /** The same with this screen's own marks that the hub has not confirmed yet. */
  readonly progress: JobProgress;
}

/** The hub beats every second; after this long without one it is away, so that it is said within three seconds. */
const SILENT_MS = 2250;
const LOOK_MS = 250;
/** How often a hub that is not well is asked what is wrong. */
const LOOK_AGAIN_MS = 5000;
/** How long after a mark the copy in the browser is brought up to date. */
const COPY_MS = 2000;
/** Marks are folded in together that come within this time. */
const TOGETHER_MS = 60;

/** A mark of this screen, shown before the hub's own event of it has come; `taken` once the hub has answered it, with the code that it gave to a spoiled blank's replacement. */
interface Ahead {
  readonly kept: Kept;
  readonly taken: boolean;
  readonly replacement?: string | undefined;
}

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
  #events: EventSource | null = null;
  #lastBeat = 0;
  #lastLook = -LOOK_AGAIN_MS;
  #reloading: Promise<void> = Promise.resolve();
  #arrived: AcceptedMark[] = [];
  #ahead: readonly Ahead[] = [];
  readonly #keptJobs = new KeptJobs();
  /** Jobs that this screen knew and the hub lists no more; those in the bin stay known by their stickers. */
  #gone: ReadonlyMap<string, LiveJob> = new Map();
  #binned: ReadonlySet<string> = new Set();
  #keptRead = false;
  readonly #asked = new Set<string>();
  /** Jobs that were told as changed and did not come whole since. */
  readonly #changed = new Set<string>();
  /** A hub that is away is asked again when it is back. */
  readonly #again = new TryAgain(() => this.away || this.reload());
  #copying: ReturnType<typeof setTimeout> | null = null;
  readonly outbox = openOutbox({
    shown: (kept) => this.#setAhead([...this.#ahead, { kept, taken: false }]),
    taken: (id, { replacement }) =>
      this.#setAhead(
        this.#ahead.map((each) => (each.kept.mark.id === id ? { ...each, taken: true, replacement } : each)),
      ),
    dropped: (id) => this.#setAhead(this.#ahead.filter(({ kept }) => kept.mark.id !== id)),
  });

  /** Begins to listen; safe to call again. */
  start(): void {
    if (this.#events !== null) return;
    this.#lastBeat = Date.now();
    this.#connect();
    void this.outbox.open().catch(() => undefined);
    setInterval(() => {
      if (Date.now() - this.#lastBeat > SILENT_MS) this.away = true;
    }, LOOK_MS);
  }

  #connect(): void {
    const events = new EventSource('/api/events');
    this.#events = events;
    events.addEventListener('open', () => {
      this.#again.came();
      void this.reload().then(() => this.#sendBinned());
      void shop.reload();
    });
    events.addEventListener('shop', () => void shop.reload());
    events.addEventListener('print', () => (this.stickerNews += 1));
    events.addEventListener('beat', (event) => {
      this.#lastBeat = Date.now();
      this.hearBeat(String(event.data));
      if (this.away) {
        this.#again.came();
        void this.reload();
      }
      this.away = false;
      if (this.outbox.kept.some(({ refused }) => refused === undefined)) void this.outbox.send();
    });
    events.addEventListener('mark', (event) => {
      const read = acceptedMark.safeParse(JSON.parse(String(event.data)));
      if (read.success) this.take(read.data);
    });
    events.addEventListener('job', (event) => {
      const read = jobEvent.safeParse(JSON.parse(String(event.data)));
      if (!read.success) return;
      void this.reload(read.data.id).then(() => this.#sendBinned());
    });
    events.addEventListener('error', () => {
      void ask('GET /health').then(({ kind }) => {
        if (kind !== 'away') return;
        this.away = true;
        void this.#fromKeptJobs();
      });
      if (events.readyState !== EventSource.CLOSED) return;
      events.close();
      setTimeout(() => this.#connect(), 1000);
    });
  }

  async #sendBinned(): Promise<void> {
    if (this.outbox.binned.length > 0) await this.outbox.sendBinned().catch(() => undefined);
  }

  /** A beat says too whether the hub is well; what is wrong where it is not, it is asked. */
  hearBeat(data: string): void {
    const read = beat.safeParse(JSON.parse(data));
    if (!read.success || read.data.ok !== false) {
      if (this.troubles.length > 0) this.troubles = [];
      this.#lastLook = -LOOK_AGAIN_MS;
      return;
    }
    if (performance.now() - this.#lastLook < LOOK_AGAIN_MS) return;
    this.#lastLook = performance.now();
    void ask('GET /health').then((answer) => {
      if (answer.kind === 'ok') this.troubles = answer.value.troubles;
    });
  }

  /**
   * Asks for the list of jobs, and for the plan of those that are new or changed; progress of all. One after another. What
   * does not come is asked for again after a moment.
   */
  reload(changed?: string): Promise<void> {
    if (changed !== undefined) this.#changed.add(changed);
    const turn = this.#reloading.then(async () => {
      let whole = false;
      try {
        whole = await this.#reload();
      } finally {
        if (whole) this.#again.came();
        else this.#again.missed();
      }
    });
    this.#reloading = turn.catch(() => undefined);
    return turn;
  }

  /** Did all come? */
  async #reload(): Promise<boolean> {
    const told = new Set(this.#ahead.filter(({ taken }) => taken));
    const list = await ask('GET /jobs');
    if (list.kind !== 'ok') return false;
    let whole = true;
    const jobs = new Map<string, LiveJob>();
    const before = this.jobs;
    this.lines = list.value.jobs;
    for (const line of this.lines) {
      const known = before.get(line.id);
      if (line.left === 0 && known === undefined && !this.#asked.has(line.id)) continue;
      const same = known !== undefined && known.line.hash === line.hash && !this.#changed.has(line.id);
      this.#changed.delete(line.id);
      const params = { id: line.id };
      const [plan, saved, progress] = await Promise.all([
        same ? null : planByDoor(line.id, line.doors, known?.plan ?? null),
        same ? null : ask('GET /jobs/:id/file', { params }),
        ask('GET /jobs/:id/progress', { params }),
      ]);
      const planned = same ? known.plan : plan;
      const missed = (saved !== null && saved.kind !== 'ok') || progress.kind !== 'ok';
      if (planned === null || missed) {
        whole = false;
        this.#changed.add(line.id);
      }
      if (planned === null) continue;
      const confirmed =
        progress.kind === 'ok' ? progress.value : (known?.confirmed ?? emptyProgress(line.id));
      const index = same ? known.index : indexParts(planned);
      const file = same ? known.file : saved?.kind === 'ok' ? saved.value.file : undefined;
      const asMarked = same ? known.asMarked : saved?.kind === 'ok' ? (saved.value.asMarked ?? []) : [];
      jobs.set(line.id, { line, plan: planned, file, asMarked, index, confirmed, progress: confirmed });
    }
    for (const [id, job] of jobs) {
      const meanwhile = this.jobs.get(id);
      const newer =
        meanwhile !== undefined &&
        meanwhile !== before.get(id) &&
        meanwhile.confirmed.seq > job.confirmed.seq;
      if (newer) jobs.set(id, { ...job, confirmed: meanwhile.confirmed });
    }
    this.#ahead = this.#ahead.filter((each) => !told.has(each));
    this.jobs = new Map([...jobs].map(([id, job]) => [id, this.#withAhead(job)]));
    this.loaded = true;
    this.stickerNews += 1;
    const looked = await this.#lookInBin(before);
    this.#copy();
    return whole && looked;
  }

  /** Which of the jobs that are listed no more are in the bin? False where the hub did not say. */
  async #lookInBin(before: ReadonlyMap<string, LiveJob>): Promise<boolean> {
    const known = [...this.#gone, ...before];
    const listed = new Set(this.lines.map(({ id }) => id));
    if (!this.#keptRead) {
      const kept = await this.#keptJobs.all(listed).catch(() => []);
      known.unshift(...kept.map((each): [string, LiveJob] => [each.line.id, liveAgain(each)]));
      this.#keptRead = true;
    }
    const gone = new Map(known.filter(([id]) => !listed.has(id)));
    this.#gone = gone;
    if (gone.size === 0) return true;
    const bin = await ask('GET /bin');
    if (bin.kind !== 'ok') return false;
    this.#binned = new Set(bin.value.jobs.map(({ id }) => id));
    this.#gone = new Map([...gone].filter(([id]) => this.#binned.has(id)));
    return true;
  }

  /** With the hub away from the beginning, shows the jobs as they were when it was last here. */
  async #fromKeptJobs(): Promise<void> {
    const all = await this.#keptJobs.all().catch(() => []);
    if (this.loaded || all.length === 0) return;
    const binned = all.filter((each) => each.binned === true);
    this.#gone = new Map(binned.map((each) => [each.line.id, liveAgain(each)]));
    this.#binned = new Set(this.#gone.keys());
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
    if (answer === null || answer.kind === 'away') return this.#inBin(code) ? 'binned' : 'unknown';
    if (answer.kind !== 'ok') return 'unknown';
    await this.open(answer.value.job.id);
    return this.find(code) === null ? 'unknown' : 'known';
  }

  #inBin(code: string): boolean {
    return [...this.#gone].some(([id, job]) => this.#binned.has(id) && knows(job, code));
  }

  /** Brings the copy in the browser's database up to date. */
  #copy(): void {
    if (this.#copying !== null) clearTimeout(this.#copying);
    this.#copying = null;
    const kept = ({ line, plan, file, asMarked, confirmed }: LiveJob): KeptJob => ({
      line,
      plan,
      file,
      asMarked,
      progress: confirmed,
    });
    const binned = [...this.#gone].filter(([id]) => this.#binned.has(id));
    const jobs = [
      ...[...this.jobs.values()].map(kept),
      ...binned.map(([, job]): KeptJob => ({ ...kept(job), binned: true })),
    ];
    this.#keptJobs.keep(jobs).catch(() => undefined);
  }

  /** Takes one more mark. Those that come close together are folded in together. */
  take(accepted: AcceptedMark): void {
    if (this.#arrived.push(accepted) === 1) setTimeout(() => this.#fold(), TOGETHER_MS);
  }

  #fold(): void {
    const arrived = this.#arrived;
    this.#arrived = [];
    const ids = new Set(arrived.map(({ mark }) => mark.id));
    this.#ahead = this.#ahead.filter(({ kept }) => !ids.has(kept.mark.id));
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

  #setAhead(ahead: readonly Ahead[]): void {
    const touched = new Set([...this.#ahead, ...ahead].map(({ kept }) => kept.job));
    this.#ahead = ahead;
    this.jobs = new Map(
      [...this.jobs].map(([id, job]) => [id, touched.has(id) ? this.#withAhead(job) : job]),
    );
  }

  /** A job with this screen's own marks on top. A spoiled blank's replacement is the hub's to name, so that waits for its answer. */
  #withAhead(job: LiveJob): LiveJob {
    const mine = this.#ahead.filter(
      ({ kept, replacement }) =>
        kept.job === job.line.id && (kept.mark.mark !== 'spoiled' || replacement !== undefined),
    );
    // Numbers count over all jobs: what this screen did is the latest of all.
    const known = [...this.jobs.values()].reduce((most, { confirmed }) => Math.max(most, confirmed.seq), 0);
    const from = Math.max(known, job.confirmed.seq) + 1;
    const marks = mine.map(({ kept: { mark, door, part }, replacement }, k): AcceptedMark => ({
      seq: from + k,
      received: mark.at,
      job: job.line.id,
      door,
      part,
      mark,
      ...(replacement === undefined
        ? {}
        : {
            replacement: {
              code: replacement,
              number: (own(job.confirmed.parts, mark.code)?.number ?? 0) + 1,
            },
          }),
    }));
    return { ...job, progress: marks.length === 0 ? job.confirmed : foldMarks(job.confirmed, marks) };
  }

  /** The part that a code stands or stood for. */
  find(code: string): { readonly job: LiveJob; readonly found: Located } | null {
    for (const job of this.jobs.values()) {
      if (!knows(job, code)) continue;
      const found = locate(job.index, job.progress, code);
      if (found !== null) return { job, found };
    }
    return null;
  }
}

/** Does or did this code stand for a part of this job? */
function knows(job: LiveJob, code: string): boolean {
  return job.index.parts.has(code) || own(job.progress.parts, code) !== undefined;
}

function liveAgain({ line, plan, file, asMarked = [], progress }: KeptJob): LiveJob {
  return { line, plan, file, asMarked, index: indexParts(plan), confirmed: progress, progress };
}

export const live = new Live();
