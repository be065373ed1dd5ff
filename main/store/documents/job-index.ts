import { liveCode } from '#core/marks/live-plan.ts';
import type { MarkedPart } from '#core/marks/judge-mark.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import { own } from '#core/marks/progress.ts';
import type { DoorSteps, PartSteps, StageStep } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';

/** What is known of a job without its plan, for its list: what it is called, and how much of it there is. */
export interface IndexHead {
  readonly id: string;
  readonly job: string;
  readonly due?: string;
  readonly units: Units;
  readonly doors: number;
  readonly parts: number;
  /** Doors that are alike but for their codes are of one kind, planned once. */
  readonly kinds: number;
  /** How many sums of stickers there are: one for each part of each kind. */
  readonly sums: number;
  readonly marks: readonly string[];
  readonly shapes: readonly DoorShape[];
}

/** The stages of a door and of its parts, without any number: doors of many sizes share one. */
export interface DoorShape {
  readonly parts: readonly Omit<PartSteps, 'code'>[];
  readonly stages: readonly StageStep[];
}

/** Characters of a part's code, and of the sum of what its sticker says. */
export const CODE_LENGTH = 10;
export const SAYS_LENGTH = 12;
/** All but the check character: as a number they order codes. */
const KEY_DIGITS = 9;

/** A code as a number that orders it. */
export function keyOf(code: string): number {
  return parseInt(code.slice(0, KEY_DIGITS), 36);
}

/** The tables of an index, one after another in its bytes: numbers of eight bytes first, then of four, then texts. */
export function tablesIn(
  bytes: ArrayBuffer,
  { doors, parts, kinds, sums }: Omit<IndexHead, 'marks' | 'shapes'>,
) {
  let at = 0;
  const keys = new Float64Array(bytes, at, parts);
  at += keys.byteLength;
  const numbers = (count: number) => {
    const table = new Uint32Array(bytes, at, count);
    at += table.byteLength;
    return table;
  };
  const texts = (length: number) => {
    const table = Buffer.from(bytes, at, length);
    at += length;
    return table;
  };
  return {
    /** Codes as numbers, the smallest first, and the place of each in the plan. */
    keys,
    places: numbers(parts),
    /** Of each door in the plan's order: its mark, its number within that, its kind, and the place of its first part. */
    markOf: numbers(doors),
    numberOf: numbers(doors),
    kindOf: numbers(doors),
    firstPart: numbers(doors + 1),
    /** Of each kind: its shape, its first sum, and where its line lies in the kept plan: from, how long, and its checksum. */
    shapeOf: numbers(kinds),
    firstSum: numbers(kinds),
    lineAt: numbers(kinds),
    lineLength: numbers(kinds),
    lineSum: numbers(kinds),
    codes: texts(parts * CODE_LENGTH),
    says: texts(sums * SAYS_LENGTH),
  };
}

/** How many bytes those take. */
export function tableBytes({ doors, parts, kinds, sums }: Omit<IndexHead, 'marks' | 'shapes'>): number {
  return parts * (8 + 4 + CODE_LENGTH) + doors * 16 + 4 + kinds * 20 + sums * SAYS_LENGTH;
}

/** Where the line of a kind lies in a kept plan. */
export interface LinePlace {
  readonly kind: number;
  readonly from: number;
  readonly to: number;
  readonly sum: number;
}

/**
 * Everything of a job's plan that marks, board, lists and stickers need, without a single setting: codes and names of its
 * parts, which stages each has, and where in the kept plan the rest of a door stands. Its tables are as another thread made
 * them; nothing is read from them before it is asked for.
 */
export class JobIndex {
  readonly head: IndexHead;
  readonly #tables: ReturnType<typeof tablesIn>;
  #named: ReadonlyMap<string, number> | null = null;

  constructor(head: IndexHead, bytes: ArrayBuffer) {
    this.head = head;
    this.#tables = tablesIn(bytes, head);
  }

  /** The name of the door at this place of the plan. */
  doorName(at: number): string {
    return `${this.mark(at)}-${this.#tables.numberOf[at] ?? 0}`;
  }

  mark(at: number): string {
    return this.head.marks[this.#tables.markOf[at] ?? 0] ?? '';
  }

  /** The names of all doors in the plan's order. */
  *doorNames(): Generator<string> {
    for (let at = 0; at < this.head.doors; at += 1) yield this.doorName(at);
  }

  /** The place of a door in the plan; undefined where there is none of this name. */
  doorNamed(name: string): number | undefined {
    if (this.#named === null) {
      const named = new Map<string, number>();
      for (let at = 0; at < this.head.doors; at += 1) named.set(this.doorName(at), at);
      this.#named = named;
    }
    return this.#named.get(name);
  }

  /** A door by its stages, with the codes of its first blanks. */
  door(at: number): DoorSteps {
    return this.#doorWith(at, (code) => code);
  }

  /** The same, with the codes of the blanks that stand for its parts now. */
  liveDoor(at: number, progress: JobProgress): DoorSteps {
    return this.#doorWith(at, (code) => liveCode(progress, code));
  }

  #doorWith(at: number, codeNow: (code: string) => string): DoorSteps {
    const { parts, stages } = this.#shape(at);
    const first = this.#tables.firstPart[at] ?? 0;
    return {
      door: this.doorName(at),
      mark: this.mark(at),
      parts: parts.map((part, k) => ({ ...part, code: codeNow(this.#code(first + k)) })),
      stages,
    };
  }

  #shape(at: number): DoorShape {
    const { kindOf, shapeOf } = this.#tables;
    const shape = this.head.shapes[shapeOf[kindOf[at] ?? 0] ?? 0];
    if (shape === undefined) throw new Error(`there is no door ${at}`);
    return shape;
  }

  #code(place: number): string {
    return this.#tables.codes.toString('latin1', place * CODE_LENGTH, (place + 1) * CODE_LENGTH);
  }

  /** Of each part of a door: its name, the code of its first blank, and the sum of what is to stand on its sticker. */
  stickers(at: number): { readonly part: string; readonly code: string; readonly says: string }[] {
    const { firstPart, firstSum, kindOf, says } = this.#tables;
    const first = firstPart[at] ?? 0;
    const sum = firstSum[kindOf[at] ?? 0] ?? 0;
    return this.#shape(at).parts.map(({ part }, k) => ({
      part,
      code: this.#code(first + k),
      says: says.toString('latin1', (sum + k) * SAYS_LENGTH, (sum + k + 1) * SAYS_LENGTH),
    }));
  }

  /** The codes of all first blanks in the plan's order. */
  *codes(): Generator<string> {
    for (let place = 0; place < this.head.parts; place += 1) yield this.#code(place);
  }

  /** Which part's first blank carries this code: the place of its door, and which of the door's parts. */
  find(code: string): { readonly door: number; readonly part: number } | null {
    const { keys, places, firstPart } = this.#tables;
    const key = keyOf(code);
    for (let k = firstAtLeast(keys, key); keys[k] === key; k += 1) {
      const place = places[k] ?? 0;
      if (this.#code(place) !== code) continue;
      const door = lastAtMost(firstPart, place);
      return { door, part: place - (firstPart[door] ?? 0) };
    }
    return null;
  }

  /** Has another job a code that this one has? */
  shares(other: JobIndex): boolean {
    const [mine, theirs] = [this.#tables.keys, other.#tables.keys];
    for (let [m, t] = [0, 0]; m < mine.length && t < theirs.length;) {
      const [own, their] = [mine[m] ?? 0, theirs[t] ?? 0];
      if (own === their) return true;
      if (own < their) m += 1;
      else t += 1;
    }
    return false;
  }

  /** The part that a code stands or stood for, as it stands now; null when the job has none. */
  locate(progress: JobProgress, code: string): MarkedPart | null {
    const first = this.find(code);
    const later = first === null ? own(progress.parts, code) : undefined;
    const at = first?.door ?? (later === undefined ? undefined : this.doorNamed(later.door));
    if (at === undefined) return null;
    const door = this.liveDoor(at, progress);
    const part =
      first === null ? door.parts.find((each) => each.part === later?.part) : door.parts[first.part];
    return part === undefined ? null : { door, part };
  }

  /** Where in the kept plan stands what is set on a door. */
  line(at: number): LinePlace {
    const { kindOf, lineAt, lineLength, lineSum } = this.#tables;
    const kind = kindOf[at] ?? 0;
    const from = lineAt[kind] ?? 0;
    return { kind, from, to: from + (lineLength[kind] ?? 0), sum: lineSum[kind] ?? 0 };
  }
}

/** The first place in an ascending table of a number that is not smaller. */
function firstAtLeast(table: Float64Array, wanted: number): number {
  let [from, to] = [0, table.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((table[middle] ?? 0) < wanted) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** The last place in an ascending table of a number that is not larger. */
function lastAtMost(table: Uint32Array, wanted: number): number {
  let [from, to] = [0, table.length - 1];
  while (from < to) {
    const middle = (from + to + 1) >> 1;
    if ((table[middle] ?? 0) <= wanted) from = middle;
    else to = middle - 1;
  }
  return from;
}
