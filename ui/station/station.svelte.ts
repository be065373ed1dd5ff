import { readCode } from '#core/codes/read-code.ts';
import type { StationId } from '#core/stages/stations.ts';
import { type Located, locate } from '#core/marks/live-plan.ts';
import type { Mark } from '#core/marks/mark.ts';
import { nextStage } from '#core/marks/stage-state.ts';
import { hasProof, proofKey, provedBy } from '#core/queue/proved.ts';
import { flatSettings, settingKey } from '#core/queue/setting-key.ts';
import { type Waiting, waitingAt } from '#core/queue/waiting.ts';
import { partName, stageName, stationInSentence } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import { bring, type Gathered } from '../assembly/gather.ts';
import { live, type LiveJob } from '../hub/live.svelte.ts';
import type { Posted } from '../hub/outbox.svelte.ts';
import type { Shown } from '../hub/screen-shown.svelte.ts';
import { badgeName, person } from '../people/person.svelte.ts';
import type { PlaceName } from '#core/plan/place-name.ts';
import { firstPlace, nextPlace, toPlace } from './places.ts';
import { newMark, postMark } from './post-mark.ts';
import type { Last, Message, Setup } from './setup-shown.ts';
import { play } from './sound.ts';
import { banner, namesOf, noCode, sheet, whatOf, whyNot } from './messages.ts';
import { hereAt } from './here-at.ts';

const REPEAT_MS = 800;
const UNDO_MS = 60_000;
/** A setup that comes up by itself may come under a finger that meant the one before it. */
const UNASKED_MS = 2000;

/** What happens at one station: scans, setups, marks, refusals. Components only render it and call it. */
export class Station {
  readonly id: StationId;
  setup = $state.raw<Setup | null>(null);
  message = $state.raw<Message | null>(null);
  last = $state.raw<Last | null>(null);
  gathered = $state.raw<Gathered | null>(null);
  /** The set-up that stands on the machine, as far as this screen knows: that of the last part marked here. */
  standing = $state.raw<ReadonlyMap<string, string> | null>(null);
  /** Scanned before the jobs were here; taken up as soon as they are. */
  early = $state<string | null>(null);
  /** A badge that nobody in the shop has: asked about before it is used. */
  stranger = $state<string | null>(null);
  /** Set-ups of which somebody said here that they are not proved yet, or made a part without saying: not asked about again. */
  #answered = $state.raw<ReadonlySet<string>>(new Set());
  /** The blank that is given up here: what becomes of it is told by the answer. */
  #givenUp: string | null = null;
  busy = $state(false);
  now = $state(performance.now());

  constructor(id: StationId) {
    this.id = id;
  }

  /** A scanned or typed code. */
  scan(text: string): void {
    if (!live.loaded) {
      this.early = text;
      return;
    }
    this.early = null;
    this.stranger = null;
    const read = readCode(text);
    if (read.kind === 'bad-check') return this.#tell(banner('bad-check', say('message.bad-check')));
    if (read.kind === 'badge') {
      if (person.knows(read.badge)) return this.signOn(read.badge);
      this.stranger = read.badge;
      return play('unknown-code');
    }
    if (read.kind === 'door') return this.#tell(banner('door-line', say('message.door-line')));
    if (read.kind !== 'part') return this.#tell(noCode(text));
    const known = live.find(read.code);
    if (known === null) return void this.#bring(read.code);
    if (this.setup?.code === read.code) {
      if (performance.now() - this.setup.since >= REPEAT_MS) void this.#onward(this.setup);
      return;
    }
    this.message = null;
    if (this.id === 'assembly' && this.#gather(read.code, known.job, known.found)) return;
    this.#show(read.code, known.job, known.found);
  }

  /** From now on marks here carry this badge. */
  signOn(badge: string): void {
    this.stranger = null;
    person.signOn(badge);
    this.#tell(banner('badge', say('message.badge', { badge: badgeName(badge) })));
  }

  /** Puts a setup away whose part is in no job any more, as after a restore, was given up elsewhere, or whose numbers the office has changed since. */
  check(jobs: typeof live.jobs): void {
    const { setup } = this;
    if (setup === null || !live.loaded) return;
    const job = jobs.get(setup.job.line.id);
    const now = job === undefined ? null : locate(job.index, job.progress, setup.code);
    if (job !== undefined && now !== null && setup.code !== this.#givenUp) {
      const here = hereAt(this.id, setup.code, now, job.progress);
      if (here.kind === 'spoiled') {
        this.putAway();
        return this.#tell(whyNot(here, this.id, now));
      }
    }
    if (job?.plan === setup.job.plan && now !== null) return;
    const stage = [...(now?.part.stages ?? []), ...(now?.door.stages ?? [])].find(
      (each) => each.stage === setup.stage.stage,
    );
    const { units } = setup.job.plan;
    if (
      job !== undefined &&
      stage !== undefined &&
      settingKey(job.plan.units, stage) === settingKey(units, setup.stage)
    )
      return;
    this.putAway();
    const code = stage === undefined ? 'job-gone' : 'job-changed';
    const names = { part: partName(setup.found.part.part), door: setup.found.door.door };
    this.#tell(banner(code, say(`message.${code}`, names)));
  }

  /** A code of no current job: perhaps of one that is finished, which the hub knows. */
  async #bring(code: string): Promise<void> {
    const brought = await live.bring(code);
    if (brought === 'known') this.scan(code);
    else if (brought === 'binned')
      this.#tell(sheet('binned', say('message.binned', { code }), say('message.binned.next')));
    else this.#tell(banner('unknown-code', say('message.unknown-code', { code })));
  }

  /** Brings a part to the door that is put together. False when there is nothing to gather: that part is told as anywhere. */
  #gather(code: string, job: LiveJob, found: Located): boolean {
    const brought = bring(this.gathered, code, job, found);
    if (brought.kind === 'nothing-to-gather') return false;
    if (brought.kind === 'other-door') {
      const names = { part: partName(found.part.part), door: found.door.door, here: brought.here };
      this.#tell(
        sheet('other-door', say('message.other-door', names), say('message.other-door.next', names)),
      );
      return true;
    }
    this.gathered = brought.gathered;
    play('setup');
    if (brought.full !== null) this.setup = asked({ code, job, found, stage: brought.full });
    return true;
  }

  #show(code: string, job: LiveJob, found: Located): void {
    const here = hereAt(this.id, code, found, job.progress);
    if (here.kind !== 'setup') {
      this.setup = null;
      return this.#tell(whyNot(here, this.id, found));
    }
    this.setup = asked({ code, job, found, stage: here.stage });
    play('setup');
  }

  /**
   * Steps to the next place that was not shown yet; after the last one marks the shown stage done: written down by the hub,
   * or kept here while it is away, before the screen says so.
   */
  async done(): Promise<void> {
    if (this.setup !== null && performance.now() >= this.setup.liveFrom) await this.#onward(this.setup);
  }

  async #onward(setup: Setup): Promise<void> {
    const next = nextPlace(setup.stage, setup);
    if (next === null) return this.#done(setup);
    const now = performance.now();
    this.setup = { ...setup, ...toPlace(setup, next), since: now, liveFrom: now + REPEAT_MS };
    play('setup');
  }

  /** Shows another place of the stage. */
  choose(at: PlaceName): void {
    if (this.setup !== null)
      this.setup = { ...this.setup, ...toPlace(this.setup, at), since: performance.now() };
  }

  /** Done from a keyboard, which has the focus there: not within the time in which a scan would not count either. */
  async doneByKey(): Promise<void> {
    if (this.setup !== null && performance.now() - this.setup.since >= REPEAT_MS) await this.done();
  }

  async #done(setup: Setup): Promise<void> {
    if (this.busy) return;
    const mark = newMark(this.id, setup.code, setup.stage.stage, 'done');
    const posted = await this.#post(mark);
    if (posted === null) return;
    const names = namesOf(setup.found, setup.stage.stage);
    const known = live.find(setup.code);
    const next =
      posted.kind === 'ok'
        ? posted.value.next
        : known === null
          ? null
          : nextStage(known.found.part, known.found.door, known.job.progress);
    this.last = {
      mark,
      text: say(posted.kind === 'kept' ? 'ui.kept' : 'ui.marked', names),
      next:
        next === null
          ? say('ui.all-done')
          : say('ui.goes-to', { stage: stageName(next.stage), station: stationInSentence(next.station) }),
      until: performance.now() + UNDO_MS,
    };
    this.notYet(setup);
    this.standing = flatSettings(setup.job.plan.units, setup.stage);
    this.putAway();
    play('done');
    if (this.id === 'assembly' && next?.station === 'assembly' && known !== null) this.#follow(setup, known);
  }

  /** The door's next setup comes up by itself. */
  #follow(done: Setup, { job, found }: { job: LiveJob; found: Located }): void {
    this.#show(done.code, job, found);
    if (this.setup !== null)
      this.setup = { ...this.setup, liveFrom: this.setup.since + UNASKED_MS, unasked: true };
  }

  /** Is the shown set-up one that has to be proved, that nobody proved, and that was not asked about here before? */
  asksProof({ job, stage }: Setup): boolean {
    const key = proofKey(job.plan.units, stage);
    return hasProof(stage) && !this.#answered.has(key) && provedBy(key, live.jobs.values()) === null;
  }

  /** The shown set-up is not proved yet; it is not asked about again. */
  notYet({ job, stage }: Setup): void {
    if (hasProof(stage)) this.#answered = new Set([...this.#answered, proofKey(job.plan.units, stage)]);
  }

  /** Records that the shown set-up was proved on a test piece; it counts for every part set alike. */
  async prove({ code, stage }: Setup): Promise<void> {
    if (this.busy) return;
    await this.#post(newMark(this.id, code, stage.stage, 'proved'));
  }

  /** Gives the shown blank up. The hub names the replacement, so this is not kept while it is away. */
  async spoil(reason: string): Promise<void> {
    const setup = this.setup;
    if (setup === null || this.busy) return;
    if (live.away) return this.#tell(banner('hub-away', say('message.spoil-away')));
    this.#givenUp = setup.code;
    const posted = await this.#post({
      ...newMark(this.id, setup.code, setup.stage.stage, 'spoiled'),
      reason,
    });
    if (posted === null) {
      this.#givenUp = null;
      return;
    }
    this.setup = null;
    this.last = null;
    const code = posted.kind === 'ok' ? (posted.value.replacement ?? '') : '';
    if (code === '') return this.#tell(banner('hub-away', say('ui.hub-away')));
    const names = { what: whatOf(setup.found), code };
    this.#tell({
      ...sheet('replacement', say('message.replacement', names), say('message.replacement.next', names)),
      sticker: { job: setup.job.line.id, code },
    });
  }

  /** Takes this station's last mark back, within its minute. */
  async undo(): Promise<void> {
    const last = this.last;
    if (last === null || this.busy) return;
    const posted = await this.#post(newMark(this.id, last.mark.code, last.mark.stage, 'undo'));
    this.last = null;
    const known = live.find(last.mark.code);
    if (posted === null || known === null) return;
    this.setup = null;
    this.#tell(banner('undone', say('ui.undone', namesOf(known.found, last.mark.stage))));
  }

  /** Sends a mark, or keeps it; null when it was refused, which is then said. */
  async #post(mark: Mark): Promise<Exclude<Posted, { kind: 'refused' }> | null> {
    this.busy = true;
    const posted = await postMark(mark).finally(() => (this.busy = false));
    if (posted?.kind !== 'refused') return posted;
    const found = live.find(mark.code)?.found;
    const what = found === undefined ? mark.code : whatOf(found, mark.stage);
    const told = sheet(posted.code, say('message.refused', { what, message: posted.message }));
    this.#tell({ ...told, refused: true });
    return null;
  }

  /** Seconds left to take the last mark back; 0 when there is nothing to take back. */
  get undoSeconds(): number {
    if (this.last === null) return 0;
    const left = Math.ceil((this.last.until - this.now) / 1000);
    return Math.max(0, Math.min(UNDO_MS / 1000, left));
  }

  /** The last mark while it can be taken back, and no part that was scanned since is on the screen. */
  get shownLast(): Last | null {
    const other = this.setup === null ? this.gathered !== null : !this.setup.unasked;
    return this.undoSeconds === 0 || other ? null : this.last;
  }

  dismiss(): void {
    this.message = null;
  }

  /** Puts the setup away without marking anything. */
  putAway(): void {
    this.setup = null;
    this.gathered = null;
    this.message = null;
  }

  /** What this screen shows, as the board tells of it: a part's set-up, or the part of a door that was gathered last. */
  shown(badge: string | null, unsent: number): Shown {
    const { setup, gathered } = this;
    const by = badge === null ? {} : { by: badge };
    const at =
      setup !== null
        ? { code: setup.code, stage: setup.stage.stage }
        : gathered !== null
          ? { code: gathered.last, stage: gathered.stage }
          : {};
    return { station: this.id, unsent, ...by, ...at };
  }

  /** What waits here now. */
  get waiting(): readonly Waiting[] {
    return waitingAt(this.id, live.jobs.values());
  }

  #tell(message: Message): void {
    this.message = message;
    play(message.code);
  }
}

/** A setup that somebody asked for now: it is live at once. */
function asked(setup: Pick<Setup, 'code' | 'job' | 'found' | 'stage'>): Setup {
  const now = performance.now();
  return { ...setup, ...firstPlace(setup.stage), since: now, liveFrom: now, unasked: false };
}
