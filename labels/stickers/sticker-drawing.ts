import { layOut } from '#core/drawing/layout.ts';
import { stickerView } from '#core/views/sticker-view.ts';
import { readPart } from '#core/plan/part-name.ts';
import type { PlanDoor, PlanPart } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';
import type { StickerPlace } from '#core/stickers/sticker-place.ts';
import type { DrawPart } from './sticker-body.ts';

/** A part is not shortened to less than this many times its width. */
const LEAST_ASPECT = 3;

/** Draws a part into whatever box its sticker has for it; its signs grow with the box, within limits. */
export function partDrawing(door: PlanDoor, part: PlanPart, units: Units, place: StickerPlace): DrawPart {
  const panel = readPart(part).kind === 'panel';
  const figure: DrawPart['figure'] = ({ width, height }) => {
    const text = panel
      ? Math.max(2.8, Math.min(10, height * 0.14))
      : Math.max(3.6, Math.min(10, height * 0.3));
    const room = { width: width - text * 1.2, height: height - text * 1.2 };
    const aspect = panel ? Infinity : Math.max(LEAST_ASPECT, room.width / room.height);
    return layOut(stickerView(door, part, { units, aspect, place }), { width, height, text });
  };
  return { figure, upright: panel };
}

/** Weight of the lines in a drawing of a height: fine ones in a small one, never under a dot of a 203 dpi printer for an edge. */
export function lineWeight(height: number): number {
  return Math.max(0.3, Math.min(0.5, height / 80));
}
