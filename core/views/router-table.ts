import type { Shape } from '../drawing/model.ts';
import { area, at, label, rectangle } from '../drawing/shapes.ts';
import { say } from '../words/say.ts';
import { circle } from './feed-arrow.ts';
import type { CutterPlace, RouterCutter } from './router-cutter.ts';

/** What a piece runs along: a fence flush with the cutter’s bearing; or the bearing alone, started against a pin. */
export type Guide = 'fence' | 'pin';

/** How thick the table is drawn, and how far left of the piece and right of its edge it goes, in units of the drawing. */
const THICK = 0.19;
const LEFT = 0.36;
const RIGHT = 1.75;
/** How high the fence stands. */
const FENCE = 1.3;

/** How far the table goes to each side. */
export function tableEnds({ edge, unit }: CutterPlace): { readonly left: number; readonly right: number } {
  return { left: -unit * LEFT, right: edge + unit * RIGHT };
}

/** The router table seen along the feed, from its infeed end: table, fence behind the cutter, the cutter with its bearing; each by name. */
export function routerTable(place: CutterPlace, cutter: RouterCutter, guide: Guide): Shape[] {
  const { edge, unit } = place;
  const { axis, opening, bearing, outline, seenTo } = cutter;
  const { left, right } = tableEnds(place);
  const low = -unit * THICK;
  const high = Math.max(unit * FENCE, place.thickness + unit * 0.3);
  const beside = seenTo + unit * 0.07;
  const named = (text: string, y: number, role: string, from = beside) =>
    label(text, at(from, y), role, 'small', 'start', Infinity, { across: right - from });
  return [
    ...(guide === 'fence' ? [area(rectangle(edge, 0, right, high), 'fence', 'tool', 'fine')] : []),
    area(rectangle(left, low, axis - opening, 0), 'table', 'tool'),
    ...(axis + opening < right ? [area(rectangle(axis + opening, low, right, 0), 'table', 'tool')] : []),
    area(outline, 'cutter', 'tool'),
    area(
      rectangle(axis - bearing.radius, bearing.low, axis + bearing.radius, bearing.high),
      'bearing',
      'paper',
    ),
    label(say('drawing.table'), at(left + unit * 0.06, low / 2), 'table-name', 'small', 'start', -low),
    ...(guide === 'fence'
      ? [named(say('drawing.fence'), high - unit * 0.17, 'fence-name', edge + unit * 0.1)]
      : []),
    named(say('drawing.bearing'), (bearing.low + bearing.high) / 2, 'bearing-name'),
    named(say('drawing.cutter'), Math.max(bearing.low / 2, unit * 0.1), 'cutter-name'),
  ];
}

/** A carrier on the piece, above it on the table, with a handle: it ends clear of what is cut. */
export function carrierOver({ thickness, unit }: CutterPlace, from: number, to: number): Shape[] {
  const [low, high] = [thickness, thickness + unit * 0.24];
  const knob = at(from + (to - from) * 0.25, high + unit * 0.2);
  return [
    area(rectangle(knob.x - unit * 0.05, high, knob.x + unit * 0.05, knob.y), 'handle', 'tool', 'fine'),
    area(circle(knob, unit * 0.12), 'handle', 'tool', 'fine'),
    area(rectangle(from, low, to, high), 'carrier', 'tool'),
    label(
      say('drawing.carrier'),
      at((from + to) / 2, (low + high) / 2),
      'carrier-name',
      'small',
      'middle',
      high - low,
      {
        across: to - from,
      },
    ),
  ];
}
