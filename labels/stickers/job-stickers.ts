import { readPart } from '#core/plan/part-name.ts';
import { createHash } from 'node:crypto';
import type { Plan, PlanDoor, PlanPart } from '#core/plan/plan.ts';
import { settableDoor } from '#core/settable/settable-door.ts';
import { paperStep } from '#core/settable/step.ts';
import { labelIn, type StickerPlace, stickerPlace } from '#core/stickers/sticker-place.ts';
import type { SizeOf } from '#core/stickers/stock.ts';
import type { SymbolKind } from '../pdf/symbol.ts';
import type { Faces } from '../pdf/typeface.ts';
import { type LaidSticker, laySticker } from './lay-sticker.ts';
import { layOutBody } from './sticker-body.ts';
import { partDrawing } from './sticker-drawing.ts';
import { type CodeFoot, codeFoot } from './sticker-foot.ts';
import type { Head } from './sticker-head.ts';
import { bodyOperators } from './sticker-operators.ts';
import { countMarks, stickerText, whichOf } from './sticker-text.ts';
import type { Stock } from './stock-in-points.ts';
import { dotsToTry, symbolFits } from './symbol-size.ts';

type Laid =
  | {
      readonly ok: true;
      readonly stickers: readonly LaidSticker[];
      readonly place: StickerPlace['state'];
      /** The same for parts that are alike. */
      readonly key: string;
    }
  | { readonly ok: false; readonly reason: 'symbol' | 'text' };

/** What like parts' stickers share, already as a page's operators from the sticker's corner. */
interface Shared {
  readonly head: Head;
  readonly bodies: readonly string[];
  readonly place: StickerPlace['state'];
}

/** So many are kept: like parts mostly come one door after another. */
const MOST_SHARED = 200;

/** Lays out a job's stickers; like parts share all but code, symbol and "k of n", so that a large job is quick. */
export class JobStickers {
  readonly #plan: Plan;
  readonly #stock: Stock;
  readonly #kind: SymbolKind;
  readonly #faces: Faces;
  readonly #counts: ReadonlyMap<string, number>;
  readonly #shared = new Map<string, Shared | null>();
  readonly #label: SizeOf;
  #lastDoor: { readonly door: PlanDoor; readonly likeness: string } | null = null;

  constructor(plan: Plan, stock: Stock, kind: SymbolKind, faces: Faces) {
    this.#plan = plan;
    this.#stock = stock;
    this.#kind = kind;
    this.#faces = faces;
    this.#counts = countMarks(plan);
    this.#label = labelIn(stock.spec, plan.units);
  }

  /** The stickers of a part, or what has no room on the stock. */
  of(door: PlanDoor, part: PlanPart): Laid {
    if (!symbolFits(this.#kind, part.code, this.#stock)) return { ok: false, reason: 'symbol' };
    const key = this.#likeness(door, part);
    for (const dots of dotsToTry(this.#kind, part.code, this.#stock)) {
      const foot = codeFoot(part.code, this.#stock, this.#kind, dots, this.#faces);
      const shared = foot === null ? null : this.#sharedBy(`${key} ${door.mark}`, door, part, foot);
      if (foot === null || shared === null) continue;
      return { ok: true, stickers: this.#stickers(door, foot, shared), place: shared.place, key };
    }
    return { ok: false, reason: 'text' };
  }

  /** The same digest for parts whose stickers differ in code and door alone. */
  #likeness(door: PlanDoor, { part, length, width, thickness, stages }: PlanPart): string {
    if (this.#lastDoor?.door !== door)
      this.#lastDoor = { door, likeness: JSON.stringify([door.values, door.stages]) };
    return digestOf(JSON.stringify([part, length, width, thickness, stages]) + this.#lastDoor.likeness);
  }

  #sharedBy(key: string, door: PlanDoor, part: PlanPart, foot: CodeFoot): Shared | null {
    const bodyKey = `${key} ${foot.bottom} ${foot.right}`;
    let shared = this.#shared.get(bodyKey);
    if (shared === undefined) {
      shared = this.#share(door, part, foot);
      const [oldest] = this.#shared.keys();
      if (oldest !== undefined && this.#shared.size >= MOST_SHARED) this.#shared.delete(oldest);
      this.#shared.set(bodyKey, shared);
    }
    return shared;
  }

  #share(door: PlanDoor, part: PlanPart, foot: CodeFoot): Shared | null {
    const place = stickerPlace(door, part, this.#plan.units, this.#label);
    const settable = settableDoor(door, paperStep(this.#plan.units));
    const shown = settable.parts.find((each) => each.part === part.part) ?? part;
    const text = stickerText(this.#plan, settable, shown, place);
    const last = String(this.#doorsLike(door));
    const words = { text, widest: whichOf(last, this.#doorsLike(door)), last };
    const draw = partDrawing(door, part, this.#plan.units, place);
    const body = layOutBody(words, { stock: this.#stock, foot }, this.#faces, draw);
    if (body === null) return null;
    const toward = readPart(part).kind === 'stile' ? 'right' : 'up';
    return { head: body.head, bodies: bodyOperators(body, toward, this.#faces), place: place.state };
  }

  #stickers(door: PlanDoor, foot: CodeFoot, { head, bodies }: Shared): LaidSticker[] {
    const doors = this.#doorsLike(door);
    return bodies.map((body, k) =>
      laySticker({ door, doors, head, foot, body, k: k + 1, of: bodies.length }, this.#stock, this.#faces),
    );
  }

  /** How many doors of its mark there are. */
  #doorsLike({ mark }: PlanDoor): number {
    return this.#counts.get(mark) ?? 1;
  }
}

/** A short name for a long text, the same for the same text alone. */
function digestOf(text: string): string {
  return createHash('sha256').update(text).digest('base64');
}
