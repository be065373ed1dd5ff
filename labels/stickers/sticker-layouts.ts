import { createHash } from 'node:crypto';
import { readPart } from '#core/plan/part-name.ts';
import type { Plan, PlanDoor, PlanPart } from '#core/plan/plan.ts';
import { labelIn, type StickerPlace, stickerPlace } from '#core/stickers/sticker-place.ts';
import type { SizeOf } from '#core/stickers/stock.ts';
import type { Faces } from '../pdf/typeface.ts';
import { figureOperators } from '../pdf/drawing-pdf.ts';
import type { PageStream } from '../pdf/page-stream.ts';
import { number } from '../pdf/pdf-number.ts';
import { type CodeFoot, codeFoot, dotsToTry, symbolFits } from './sticker-code.ts';
import { lineWeight, partDrawing } from './sticker-drawing.ts';
import type { Head } from './sticker-head.ts';
import { countOf, layOutBody } from './sticker-layout.ts';
import { stickerText, whichOf } from './sticker-text.ts';
import type { Stock } from '../pdf/stock.ts';
import type { SymbolKind } from '../pdf/symbol.ts';

/** Draws one sticker on a page, its lower left corner at a place. */
export type LaidSticker = (page: PageStream, at: { readonly x: number; readonly y: number }) => void;

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
export class StickerLayouts {
  readonly #plan: Plan;
  readonly #stock: Stock;
  readonly #kind: SymbolKind;
  readonly #faces: Faces;
  readonly #counts: ReadonlyMap<string, number>;
  readonly #shared = new Map<string, Shared | null>();
  readonly #label: SizeOf;
  #lastDoor: { readonly door: PlanDoor; readonly likeness: string } | null = null;

  constructor(plan: Plan, stock: Stock, kind: SymbolKind, faces: Faces, counts: ReadonlyMap<string, number>) {
    this.#plan = plan;
    this.#stock = stock;
    this.#kind = kind;
    this.#faces = faces;
    this.#counts = counts;
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
      const { head, bodies, place } = shared;
      const stickers = bodies.map((body, k) => this.#sticker(door, foot, head, body, k + 1, bodies.length));
      return { ok: true, stickers, place, key };
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
    const text = stickerText(this.#plan, door, part, place);
    const count = this.#counts.get(door.mark) ?? 1;
    const body = layOutBody(
      text,
      whichOf(String(count), count),
      String(count),
      this.#stock,
      foot,
      this.#faces,
      partDrawing(door, part, this.#plan.units, place),
    );
    if (body === null) return null;
    const arrow = arrowOperators(body.head.arrow, readPart(part).kind === 'stile' ? 'right' : 'up');
    const bodies = body.faces.map(({ runs, drawing }) => {
      const texts = [...body.head.runs, ...runs].map(
        ({ text: run, x, y, size, weight }) =>
          `BT /${weight === 'bold' ? 'B' : 'R'} ${number(size)} Tf ${number(x)} ${number(y)} Td ${this.#faces[weight].encode(run)} Tj ET`,
      );
      const figure =
        drawing === null
          ? []
          : [
              figureOperators(drawing.figure, this.#faces, {
                x: drawing.box.x,
                y: drawing.box.y,
                weight: lineWeight(drawing.box.height),
              }),
            ];
      return [arrow, ...texts, ...figure].join('\n');
    });
    return { head: body.head, bodies, place: place.state };
  }

  #sticker(door: PlanDoor, foot: CodeFoot, head: Head, body: string, k: number, of: number): LaidSticker {
    const number = door.door.slice(door.mark.length + 1);
    const which = whichOf(number, this.#counts.get(door.mark) ?? 1);
    const { size, right, y } = head.which;
    const { symbol, code } = foot;
    const { count } = head;
    const name = `${head.name.before}-${number}`;
    const nameX =
      head.name.side === 'left' ? head.name.x : head.name.x - this.#faces.bold.width(name, head.name.size);
    const counted = countOf(k, of);
    return (page, at) => {
      page.placed(at.x, at.y, body);
      page.text(name, at.x + nameX, at.y + head.name.y, head.name.size, 'bold');
      const wide = this.#faces.regular.width(which, size);
      page.text(which, at.x + right - wide, at.y + y, size);
      for (const line of code) page.text(line.text, at.x + line.x, at.y + line.y, line.size, 'bold');
      if (of > 1)
        page.text(
          counted,
          at.x + count.right - this.#faces.bold.width(counted, count.size),
          at.y + count.y,
          count.size,
          'bold',
        );
      page.symbol(symbol.bars, at.x + symbol.x, at.y + symbol.y, symbol.dots, this.#stock.dpi, symbol.height);
    };
  }
}

/** A short name for a long text, the same for the same text alone. */
function digestOf(text: string): string {
  return createHash('sha256').update(text).digest('base64');
}

function arrowOperators({ x, y, width, height }: Head['arrow'], toward: 'up' | 'right'): string {
  const [along, across] = toward === 'up' ? [height, width] : [width, height];
  const points = [
    [0, 0.38],
    [0.5, 0.38],
    [0.5, 0.12],
    [1, 0.5],
    [0.5, 0.88],
    [0.5, 0.62],
    [0, 0.62],
  ] as const;
  const path = points.map(([u, v], k) => {
    const [dx, dy] = toward === 'up' ? [v * across, u * along] : [u * along, v * across];
    return `${number(x + dx)} ${number(y + dy)} ${k === 0 ? 'm' : 'l'}`;
  });
  return `${path.join(' ')} h f`;
}
