import { readCode } from '#core/codes/read-code.ts';
import type { StationId } from '#core/joint/names.ts';
import type { Located } from '#core/marks/live-plan.ts';
import type { Mark } from '#core/marks/mark.ts';
import { judgeMark } from '#core/marks/judge-mark.ts';
import { doorDone, missingBefore, nextStage } from '#core/marks/stage-state.ts';
import type { PlanDoor, PlanStage } from '#core/plan/plan.ts';
import { type Group, queueGroups } from '#core/queue/groups.ts';
import { flatSettings } from '#core/queue/setting-key.ts';
import { waitingAt } from '#core/queue/waiting.ts';
import { partName, stageName, stationName } from '#core/words/names.ts';
import { say } from '#core/words/say.ts';
import { live, type LiveJob } from '../hub/live.svelte.ts';
import type { Posted } from '../hub/outbox.svelte.ts';
import { badgeName, person } from '../people/person.svelte.ts';
import { play } from './sound.ts';
import { hereAt } from './where.ts';

/** A setup on the screen: this part, this stage, no other. */
export interface Setup {
  readonly code: string;
  readonly job: LiveJob;
  readonly found: Located;
  readonly stage: PlanStage;
  /** When it came on the screen, on the page's clock. */
  readonly since: number;
}

/** A sentence over the screen: its refusal code, what it says, and what to do next. */
export interface Message {
  readonly code: string;
  readonly text: string;
  readonly next: string;
  /** A banner leaves the screen below as it is. */
  readonly banner: boolean;
}

/** A door whose parts are being brought together at assembly: those that were scanned so far. */
export interface Gathered {
  readonly job: string;
  readonly door: PlanDoor;
  readonly codes: ReadonlySet<string>;
  /** The code scanned last. */
  readonly last: string;
}

/** The mark made last here, which can be taken back for a minute. */
interface Last {
  readonly mark: Mark;
  readonly text: string;
  readonly next: string;
  readonly until: number;
}

const REPEAT_MS = 800;
const UNDO_MS = 60_000;

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
    const read = readCode(text);
    if (read.kind === 'bad-check') return this.#tell('bad-check', say('message.bad-check'), '', true);
    if (read.kind === 'badge') {
      person.signOn(read.badge);
      return this.#tell('badge', say('message.badge', { badge: badgeName(read.badge) }), '', true);
    }
    if (read.kind === 'door') return this.#tell('door-line', say('message.door-line'), '', true);
    if (read.kind !== 'part')
      return this.#tell('malformed', say('message.malformed', { text: text.slice(0, 20) }), '', true);
    const known = live.find(read.code);
    if (known === null) return void this.#bring(read.code);
    if (this.setup?.code === read.code) {
      if (performance.now() - this.setup.since >= REPEAT_MS) void this.done();
      return;
    }
    this.message = null;
    if (this.id === 'assembly' && this.#gather(read.code, known.job, known.found)) return;
    this.#show(read.code, known.job, known.found);
  }

  /** A code of no current job: perhaps of one that is finished, which the hub knows. */
  async #bring(code: string): Promise<void> {
    if (await live.bring(code)) this.scan(code);
    else this.#tell('unknown-code', say('message.unknown-code', { code }), '', true);
  }

  /** Brings a part to the door that is put together. False when there is nothing to gather: that part is told as anywhere. */
  #gather(code: string, job: LiveJob, { door, part }: Located): boolean {
    const whole = doorDone(job.progress, door.door);
    const next = door.stages.find(({ stage }) => !Object.hasOwn(whole, stage));
    if (next?.stage !== 'dryfit' || part.code !== code) return false;
    const own = missingBefore(next, part, door, job.progress).filter((each) =>
      each.startsWith(`${part.part}: `),
    );
    if (own.length > 0) return false;
    const before = this.gathered;
    const other = before !== null && (before.door.door !== door.door || before.job !== job.line.id);
    if (other) {
      const names = { part: partName(part.part), door: door.door, here: before.door.door };
      this.#tell(
        'other-door',
        say('message.other-door', names),
        say('message.other-door.next', names),
        false,
      );
      return true;
    }
    const live = new Set(door.parts.map((each) => each.code));
    const codes = new Set([...(before?.codes ?? []), code].filter((each) => live.has(each)));
    this.gathered = { job: job.line.id, door, codes, last: code };
    play('setup');
    if (codes.size === live.size)
      this.setup = { code, job, found: { door, part }, stage: next, since: performance.now() };
    return true;
  }

  #show(code: string, job: LiveJob, found: Located): void {
    const here = hereAt(this.id, code, found, job.progress);
    if (here.kind === 'setup') {
      this.setup = { code, job, found, stage: here.stage, since: performance.now() };
      play('setup');
      return;
    }
    this.setup = null;
    const station = stationName(this.id);
    if (here.kind === 'spoiled')
      return this.#tell(
        'spoiled',
        say('message.spoiled'),
        say('message.spoiled.next', { replacedBy: here.replacedBy }),
        false,
      );
    if (here.kind === 'finished') return this.#tell('finished', say('message.finished'), '', false);
    const figures = {
      here: station,
      station: stationName(here.next.station),
      stage: stageName(here.next.stage),
    };
    const missing = here.kind === 'stage-not-reached' ? listed(here.missing.map(missingName)) : '';
    this.#tell(
      here.kind,
      say(`message.${here.kind}`, figures),
      say(`message.${here.kind}.next`, { ...figures, missing }),
      false,
    );
  }

  /** Marks the shown stage done: written down by the hub, or kept here while it is away, before the screen says so. */
  async done(): Promise<void> {
    const setup = this.setup;
    if (setup === null || this.busy) return;
    const mark = this.#markOf(setup.code, setup.stage.stage, 'done');
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
          : say('ui.goes-to', { stage: stageName(next.stage), station: stationName(next.station) }),
      until: performance.now() + UNDO_MS,
    };
    this.standing = flatSettings(setup.job.plan.units, setup.stage);
    this.setup = null;
    this.message = null;
    this.gathered = null;
    play('done');
    if (this.id === 'assembly' && next?.station === 'assembly' && known !== null)
      this.#show(setup.code, known.job, known.found);
  }

  /** Records that the shown set-up was proved on a test piece; it counts for every part set alike. */
  async prove(): Promise<void> {
    const setup = this.setup;
    if (setup === null || this.busy) return;
    await this.#post(this.#markOf(setup.code, setup.stage.stage, 'proved'));
  }

  /** Gives the shown blank up. The hub names the replacement, so this is not kept while it is away. */
  async spoil(reason: string): Promise<void> {
    const setup = this.setup;
    if (setup === null || this.busy) return;
    if (live.away) return this.#tell('hub-away', say('message.spoil-away'), '', true);
    const mark = { ...this.#markOf(setup.code, setup.stage.stage, 'spoiled'), reason };
    const posted = await this.#post(mark);
    if (posted === null) return;
    this.setup = null;
    const code = posted.kind === 'ok' ? (posted.value.replacement ?? '') : '';
    if (code === '') return this.#tell('hub-away', say('ui.hub-away'), '', true);
    const names = { ...namesOf(setup.found, setup.stage.stage), code };
    this.#tell(
      'replacement',
      say('message.replacement', names),
      say('message.replacement.next', names),
      false,
    );
  }

  /** Takes this station's last mark back, within its minute. */
  async undo(): Promise<void> {
    const last = this.last;
    if (last === null || this.busy) return;
    const posted = await this.#post(this.#markOf(last.mark.code, last.mark.stage, 'undo'));
    this.last = null;
    const known = live.find(last.mark.code);
    if (posted === null || known === null) return;
    this.setup = null;
    this.#tell('undone', say('ui.undone', namesOf(known.found, last.mark.stage)), '', true);
  }

  /** Sends a mark, or keeps it; null when it was refused, which is then said. While the hub is away it is judged here. */
  async #post(mark: Mark): Promise<Exclude<Posted, { kind: 'refused' }> | null> {
    const known = live.find(mark.code);
    if (known === null) return null;
    if (live.away) {
      const judged = judgeMark(known.found, known.job.progress, mark);
      if (!judged.ok) {
        const figures = { ...judged.figures, missing: (judged.missing ?? []).join(', '), stage: mark.stage };
        this.#refused(judged.code, say(`refusal.${judged.code}`, { ...figures, code: mark.code }));
        return null;
      }
    }
    this.busy = true;
    const { door, part } = known.found;
    try {
      const posted = await live.outbox.post({
        mark,
        job: known.job.line.id,
        door: door.door,
        part: part.part,
      });
      if (posted.kind !== 'refused') return posted;
      this.#refused(posted.code, posted.message);
    } catch {
      this.#refused('not-kept', say('message.not-kept'));
    } finally {
      this.busy = false;
    }
    return null;
  }

  #refused(code: string, message: string): void {
    this.#tell(code, say('message.refused', { message }), '', false);
  }

  /** Seconds left to take the last mark back; 0 when there is nothing to take back. */
  get undoSeconds(): number {
    return this.last === null ? 0 : Math.max(0, Math.ceil((this.last.until - this.now) / 1000));
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

  /** What waits here now, in groups of identical setting, in the order in which to run them. */
  get queue(): readonly Group[] {
    return queueGroups(waitingAt(this.id, live.jobs.values()), this.standing);
  }

  #markOf(code: string, stage: string, mark: Mark['mark']): Mark {
    const by = person.badge === null ? {} : { by: person.badge };
    return {
      id: crypto.randomUUID(),
      code,
      station: this.id,
      stage,
      mark,
      ...by,
      at: new Date().toISOString(),
    };
  }

  #tell(code: string, text: string, next: string, banner: boolean): void {
    this.message = { code, text, next, banner };
    play(code);
  }
}

function namesOf({ part, door }: Located, stage: string): { part: string; door: string; stage: string } {
  return { part: partName(part.part), door: door.door, stage: stageName(stage) };
}

/** The first few of a list, and how many more there are. */
function listed(names: readonly string[]): string {
  const SHOWN = 4;
  const more = names.length - SHOWN;
  return `${names.slice(0, SHOWN).join(', ')}${more > 0 ? ` ${say('message.more', { count: more })}` : ''}`;
}

/** "rail-top: tenon" as people say it. */
function missingName(missing: string): string {
  const [part, stage] = missing.split(': ');
  return stage === undefined ? stageName(missing) : `${partName(part ?? '')} (${stageName(stage)})`;
}
