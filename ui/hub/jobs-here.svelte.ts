import type { JobLine } from '#core/api/jobs-api.ts';
import { type Located, locate } from '#core/marks/live-plan.ts';
import type { AcceptedMark } from '#core/marks/mark.ts';
import { foldMarks } from '#core/marks/progress.ts';
import { stageIs } from '#core/stages/stage-id.ts';
import { AheadMarks } from './ahead-marks.ts';
import { ArrivingMarks } from './arriving-marks.ts';
import { GoneJobs } from './gone-jobs.ts';
import { KeptJobs } from './kept-jobs.ts';
import { knowsCode, liveAgain, type LiveJob, toKeep } from './live-job.ts';
import { loadJobs } from './load-jobs.ts';

/** How long after a mark the copy in the browser is brought up to date. */
const COPY_MS = 2000;

/** The jobs as this screen knows them: as the hub gave them, with every mark that was told since and this screen's own on top. */
export class JobsHere {
  /** Every job that the hub has, finished ones too. */
  lines = $state.raw<readonly JobLine[]>([]);
  jobs = $state.raw<ReadonlyMap<string, LiveJob>>(new Map());
  loaded = $state(false);
  /** Counts what may change which stickers are to be printed: other plans, spoiled blanks, finished doors, prints. */
  stickerNews = $state(0);
  /** The tag of the list of jobs that is known here. */
  tag: string | undefined;
  /** Finished jobs that somebody asked for. */
  readonly asked = new Set<string>();
  /** Jobs that were told as changed and did not come whole since. */
  readonly changed = new Set<string>();
  /** Jobs of whose marks none was missed since they were asked for. */
  readonly sure = new Set<string>();
  readonly ahead = new AheadMarks((touched) => {
    const shown = [...this.jobs].map(
      ([id, job]) => [id, touched.has(id) ? this.#withAhead(job) : job] as const,
    );
    this.jobs = new Map(shown);
  });
  readonly #arriving = new ArrivingMarks((marks) => this.#fold(marks));
  readonly #keptJobs = new KeptJobs();
  readonly #gone = new GoneJobs(this.#keptJobs);
  #copying: ReturnType<typeof setTimeout> | null = null;

  /**
   * Asks for the list of jobs, and for what is not known of them. `unbroken` says whether every mark was told since this
   * began. Did all come?
   */
  load(unbroken: () => boolean): Promise<boolean> {
    const answered = this.ahead.answered();
    const before = this.jobs;
    return this.#arriving.noted(async (came) => {
      const { asked, changed, sure } = this;
      const loaded = await loadJobs({ jobs: before, asked, changed, sure }, (lines) => (this.lines = lines));
      if (loaded === null) return false;
      const { lines, jobs, fresh, tag, whole } = loaded;
      this.tag = tag;
      if (unbroken()) for (const id of fresh) sure.add(id);
      this.ahead.caughtUp(
        (each) => answered.has(each) && (fresh.has(each.kept.job) || !jobs.has(each.kept.job)),
      );
      // What was asked for lacks what came meanwhile; what was not asked for has it.
      const now = [...jobs].map(([id, job]) => {
        const confirmed = fresh.has(id)
          ? foldMarks(job.confirmed, came)
          : (this.jobs.get(id)?.confirmed ?? job.confirmed);
        return [id, { ...job, confirmed }] as const;
      });
      this.#show(now);
      this.stickerNews += 1;
      const looked = await this.#gone.look(new Set(lines.map(({ id }) => id)), before);
      this.#copy();
      return whole && looked;
    });
  }

  /** With the hub away from the beginning, shows the jobs as they were when it was last here. */
  async showKept(): Promise<void> {
    const all = await this.#keptJobs.all().catch(() => []);
    if (this.loaded || all.length === 0) return;
    this.#gone.take(all.flatMap((each) => (each.binned === true ? [liveAgain(each)] : [])));
    const kept = all.filter((each) => each.binned !== true);
    this.lines = kept.map(({ line }) => line);
    this.#show(kept.map((each) => [each.line.id, liveAgain(each)]));
  }

  #show(jobs: readonly (readonly [string, LiveJob])[]): void {
    this.jobs = new Map(jobs);
    this.jobs = new Map(jobs.map(([id, job]) => [id, this.#withAhead(job)]));
    this.loaded = true;
  }

  /** Is a job in the bin that this code stands or stood in? */
  inBin(code: string): boolean {
    return this.#gone.has(code);
  }

  /** Takes one more mark. Those that come close together are folded in together. */
  take(accepted: AcceptedMark): void {
    this.#arriving.take(accepted);
  }

  #fold(arrived: readonly AcceptedMark[]): void {
    const ids = new Set(arrived.map(({ mark }) => mark.id));
    this.ahead.caughtUp(({ kept }) => ids.has(kept.mark.id));
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

  /** Brings the copy in the browser's database up to date. */
  #copy(): void {
    if (this.#copying !== null) clearTimeout(this.#copying);
    this.#copying = null;
    const binned = this.#gone.binned.map((job) => ({ ...toKeep(job), binned: true as const }));
    this.#keptJobs.keep([...[...this.jobs.values()].map(toKeep), ...binned]).catch(() => undefined);
  }

  /** A job with this screen's own marks on top. */
  #withAhead(job: LiveJob): LiveJob {
    const known = [...this.jobs.values()].reduce((most, { confirmed }) => Math.max(most, confirmed.seq), 0);
    return this.ahead.on(job, known);
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
