import type { Mark, Refusal } from '#core/marks/mark.ts';
import { type AnswerOf, ask } from './client.ts';
import { sentTo } from './elsewhere.ts';
import { newerScreens } from '../offline/newer-screens.ts';
import { dependents, heldBack, nextToSend } from './sending-order.ts';
import { type Kept, KeptMarks } from './kept-marks.ts';

type SentMark = AnswerOf<'POST /marks'>;
type Sent = Extract<SentMark, { kind: 'ok' }>['value'];

/** What became of a mark: taken by the hub, kept here until the hub is back, or refused. */
export type Posted =
  | { readonly kind: 'ok'; readonly value: Sent }
  | { readonly kind: 'kept' }
  | { readonly kind: 'refused'; readonly code: string; readonly message: string };

/** What the outbox needs of the world around it. */
export interface Around {
  readonly send: (mark: Mark) => Promise<SentMark>;
  readonly marks: Pick<KeptMarks, 'add' | 'all' | 'change' | 'remove'>;
  /** Told when a mark is to be shown as made, was taken, or is not to be shown any more. */
  readonly shown: (kept: Kept) => void;
  readonly taken: (id: string, answer: Sent) => void;
  readonly dropped: (id: string) => void;
  /** Told when another page of this browser has sent a mark or thrown it away: the hub knows which. */
  readonly settled: (id: string) => void;
}

const PATIENCE_MS = 3000;
const LOCK = 'shoulderline.outbox';
/** The hub's code for a mark of a job in the bin. */
const BINNED: Refusal = 'binned';

/**
 * Every mark of this screen goes through here: first into the browser's database, then to the hub, one after another
 * in order. The hub knows a mark by its id, so one sent again after a lost answer counts once.
 */
export class Outbox {
  kept = $state.raw<readonly Kept[]>([]);
  readonly #around: Around;
  /** The marks that are shown as made, by their order. */
  readonly #shown = new Map<number, string>();
  #looked = false;
  readonly #people = new Map<number, (posted: Posted) => void>();
  #running: Promise<void> | null = null;
  #again = false;

  constructor(around: Around) {
    this.#around = around;
  }

  /** Marks that were refused after they had been kept: a person settles them, but for those that wait for the bin. */
  get refused(): readonly Kept[] {
    return this.kept.filter(({ refused }) => refused !== undefined && refused.code !== BINNED);
  }

  /** May something be left to send? Until the browser's database was read, an earlier page may have left something. */
  get waits(): boolean {
    return !this.#looked || this.kept.some(({ refused }) => refused === undefined);
  }

  /** Marks of jobs that are in the bin: nothing is to be decided of them, and they count once their job is back. */
  get binned(): readonly Kept[] {
    return this.kept.filter(({ refused }) => refused?.code === BINNED);
  }

  /** Something has happened to the jobs: what waits for one in the bin is sent once more. */
  async sendBinned(): Promise<void> {
    for (const each of this.binned) {
      const { refused: _refused, ...bare } = each;
      await this.#around.marks.change(bare);
    }
    await this.#look();
    await this.send();
  }

  /** Takes up what an earlier page left, and sends it. */
  async open(): Promise<void> {
    await this.#look();
    await this.send();
  }

  /** Keeps a mark and sends it. Someone waits for the answer, so a refusal now goes to them and is not kept. */
  async post(kept: Omit<Kept, 'order'>): Promise<Posted> {
    const added = await this.#around.marks.add(kept);
    this.#show(added);
    const outcome = new Promise<Posted>((settled) => {
      this.#people.set(added.order, settled);
      setTimeout(() => this.#settle(added.order, { kind: 'kept' }), PATIENCE_MS);
    });
    void this.send();
    return outcome;
  }

  /** Sends what is kept, in order, until the hub is away or nothing is left. Screens of one browser take turns. */
  send(): Promise<void> {
    if (this.#running !== null) {
      this.#again = true;
      return this.#running;
    }
    const turn = async () => {
      do {
        this.#again = false;
        await this.#sendAll();
      } while (this.#askedAgain());
    };
    const locks = (globalThis.navigator as Partial<Navigator> | undefined)?.locks;
    this.#running = (locks === undefined ? turn() : locks.request(LOCK, turn))
      .catch(() => undefined)
      .finally(() => {
        this.#running = null;
        if (this.#askedAgain()) void this.send();
        else for (const order of this.#people.keys()) this.#settle(order, { kind: 'kept' });
      });
    return this.#running;
  }

  /** Was a mark put in while the last turn came to its end? */
  #askedAgain(): boolean {
    return this.#again;
  }

  async #sendAll(): Promise<void> {
    for (;;) {
      const kept = await this.#look();
      const next = nextToSend(kept);
      if (next === null) return;
      const answer = await this.#around.send(next.mark);
      if (answer.kind === 'away' || (answer.kind === 'refused' && isLater(answer.status))) return;
      if (answer.kind === 'ok') {
        await this.#around.marks.remove(next.order);
        this.#shown.delete(next.order);
        this.#around.taken(next.mark.id, answer.value);
        this.#settle(next.order, { kind: 'ok', value: answer.value });
      } else {
        const refused =
          answer.kind === 'refused'
            ? { code: answer.refusal.code, message: answer.refusal.message }
            : { code: 'malformed', message: answer.faults[0]?.message ?? '' };
        await this.#refuse(next, refused);
      }
      await this.#look();
    }
  }

  async #refuse(one: Kept, refused: { code: string; message: string }): Promise<void> {
    if (!this.#people.has(one.order)) return this.#around.marks.change({ ...one, refused });
    await this.#remove(one);
    this.#settle(one.order, { kind: 'refused', ...refused });
  }

  /** A person decides: send a refused mark again with all that stand on it, or throw them all away. */
  async decide(one: Kept, how: 'again' | 'throw-away'): Promise<void> {
    const all = [one, ...dependents(this.kept, one)];
    // Without what it stands on, none is to be sent meanwhile.
    if (how === 'throw-away') for (const each of all.toReversed()) await this.#remove(each);
    else for (const { refused: _refused, ...bare } of all) await this.#around.marks.change(bare);
    await this.#look();
    await this.send();
  }

  /** Looks what is kept, by other pages of this browser too, and shows as made what is to be sent: nothing that was refused or stands on that. */
  async #look(): Promise<readonly Kept[]> {
    const kept = await this.#around.marks.all();
    this.kept = kept;
    this.#looked = true;
    const orders = new Set(kept.map(({ order }) => order));
    for (const [order, id] of this.#shown) {
      if (orders.has(order)) continue;
      this.#shown.delete(order);
      this.#around.settled(id);
    }
    const held = new Set(heldBack(kept));
    for (const each of kept)
      if (each.refused === undefined && !held.has(each)) this.#show(each);
      else this.#drop(each);
    return kept;
  }

  #show(kept: Kept): void {
    if (this.#shown.has(kept.order)) return;
    this.#shown.set(kept.order, kept.mark.id);
    this.#around.shown(kept);
  }

  #drop({ order, mark }: Kept): void {
    if (this.#shown.delete(order)) this.#around.dropped(mark.id);
  }

  async #remove(kept: Kept): Promise<void> {
    await this.#around.marks.remove(kept.order);
    this.#drop(kept);
  }

  #settle(order: number, posted: Posted): void {
    this.#people.get(order)?.(posted);
    this.#people.delete(order);
  }
}

/** An outbox in this browser's database that sends to the hub. */
export function openOutbox(around: Pick<Around, 'shown' | 'taken' | 'dropped' | 'settled'>): Outbox {
  return new Outbox({
    send: markSent,
    marks: new KeptMarks(),
    ...around,
  });
}

/** Sends a mark. A hub with other screens may know no mark of this page's form: it waits for the page of that hub's. */
async function markSent(mark: Mark): Promise<SentMark> {
  const answer = await ask('POST /marks', { body: mark, ...sentTo() });
  const malformed = answer.kind === 'faults' || (answer.kind === 'refused' && answer.status === 400);
  return malformed && newerScreens.older ? { kind: 'away' } : answer;
}

/** With these the hub refuses a mark for what it says; with all others for how the hub stands, or for who sends it and how often. */
const FOR_WHAT_IT_SAYS = new Set([400, 404, 409]);

/** Is a mark refused for anything but what it says? Then it is kept, and sent once the hub is well, or this device is paired again. */
function isLater(status: number): boolean {
  return !FOR_WHAT_IT_SAYS.has(status);
}
