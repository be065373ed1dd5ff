import { readCode } from '#core/codes/read-code.ts';
import type { StationId } from '#core/joint/names.ts';
import type { Located } from '#core/marks/live-plan.ts';
import type { Mark } from '#core/marks/mark.ts';
import { nextStage } from '#core/marks/stage-state.ts';
import type { PlanStage } from '#core/plan/plan.ts';
import { partName, stageName, stationName } from '#core/words/names.ts';
import { say } from '#core/words/say.ts';
import { hub } from '../hub/client.ts';
import { live, type LiveJob } from '../hub/live.svelte.ts';
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
    if (read.kind !== 'part')
      return this.#tell('malformed', say('message.malformed', { text: text.slice(0, 20) }), '', true);
    const known = live.find(read.code);
    if (known === null)
      return this.#tell('unknown-code', say('message.unknown-code', { code: read.code }), '', true);
    if (this.setup?.code === read.code) {
      if (performance.now() - this.setup.since >= REPEAT_MS) void this.done();
      return;
    }
    this.message = null;
    this.#show(read.code, known.job, known.found);
  }

  #show(code: string, job: LiveJob, found: Located): void {
    const here = hereAt(this.id, code, found, job.progress);
    if (here.kind === 'setup') {
      this.setup = { code, job, found, stage: here.stage, since: performance.now() };
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

  /** Marks the shown stage done: written down by the hub before the screen says so. */
  async done(): Promise<void> {
    const setup = this.setup;
    if (setup === null || this.busy) return;
    this.busy = true;
    const mark = this.#markOf(setup.code, setup.stage.stage, 'done');
    const answer = await hub.mark(mark);
    this.busy = false;
    if (answer.kind === 'away') return this.#tell('hub-away', say('ui.hub-away'), '', true);
    if (answer.kind !== 'ok') {
      const { code, message } =
        answer.kind === 'refused'
          ? answer.refusal
          : { code: 'malformed', message: answer.faults[0]?.message ?? '' };
      return this.#tell(code, say('message.refused', { message }), '', false);
    }
    const { next } = answer.value;
    const names = {
      part: partName(setup.found.part.part),
      door: setup.found.door.door,
      stage: stageName(setup.stage.stage),
    };
    this.last = {
      mark,
      text: say('ui.marked', names),
      next:
        next === null
          ? say('ui.all-done')
          : say('ui.goes-to', { stage: stageName(next.stage), station: stationName(next.station) }),
      until: performance.now() + UNDO_MS,
    };
    this.setup = null;
    this.message = null;
  }

  /** Takes this station's last mark back, within its minute. */
  async undo(): Promise<void> {
    const last = this.last;
    if (last === null || this.busy) return;
    this.busy = true;
    const answer = await hub.mark(this.#markOf(last.mark.code, last.mark.stage, 'undo'));
    this.busy = false;
    if (answer.kind === 'away') return this.#tell('hub-away', say('ui.hub-away'), '', true);
    this.last = null;
    if (answer.kind === 'refused')
      return this.#tell(
        answer.refusal.code,
        say('message.refused', { message: answer.refusal.message }),
        '',
        false,
      );
    const known = live.find(last.mark.code);
    if (known !== null) {
      const names = {
        part: partName(known.found.part.part),
        door: known.found.door.door,
        stage: stageName(last.mark.stage),
      };
      this.#tell('undone', say('ui.undone', names), '', true);
    }
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
    this.message = null;
  }

  /** The parts whose next stage is done here, ready to be worked on. */
  get waiting(): readonly { readonly job: LiveJob; readonly found: Located; readonly stage: PlanStage }[] {
    return [...live.jobs.values()].flatMap((job) =>
      job.plan.doors.flatMap(({ parts }) =>
        parts.flatMap(({ code }) => {
          const known = live.find(code);
          if (known === null) return [];
          const stage = nextStage(known.found.part, known.found.door, job.progress);
          return stage?.station === this.id &&
            hereAt(this.id, known.found.part.code, known.found, job.progress).kind === 'setup'
            ? [{ job, found: known.found, stage }]
            : [];
        }),
      ),
    );
  }

  #markOf(code: string, stage: string, mark: Mark['mark']): Mark {
    return { id: crypto.randomUUID(), code, station: this.id, stage, mark, at: new Date().toISOString() };
  }

  #tell(code: string, text: string, next: string, banner: boolean): void {
    this.message = { code, text, next, banner };
  }
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
