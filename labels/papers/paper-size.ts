import type { PaperSize } from '#core/api/prints-api.ts';
import type { Units } from '#core/length/units.ts';
import type { Box, Size } from '../pdf/box.ts';

/** Points for each unit of a job: a full-size drawing is laid out at this scale. */
export function pointsPer(units: Units): number {
  return units === 'in' ? 72 : 72 / 25.4;
}

const MM = 72 / 25.4;

/** The sheets that papers are printed on, upright (ISO 216 for A4). */
export const PAPERS: Readonly<Record<PaperSize, Size>> = {
  letter: { width: 612, height: 792 },
  a4: { width: 210 * MM, height: 297 * MM },
};

/** White on every side: office printers reach nearer to the edge than this (common practice, no source). */
export const MARGIN = 28;
/** Room for the lines at the head and the foot of a page. */
export const HEAD = 30;
export const FOOT = 24;

/** What is left of a page between head and foot. */
export function bodyOf(page: Size): Box {
  return {
    x: MARGIN,
    y: MARGIN + FOOT,
    width: page.width - 2 * MARGIN,
    height: page.height - 2 * MARGIN - HEAD - FOOT,
  };
}
