import { type Head, headRuns } from './head.ts';
import type { Outline } from './outline.ts';

/**
 * The sight line of one opening, anticlockwise from its bottom left corner at the origin: square, or with an arch over
 * its flats. The bead line is its offset by the bead, the groove's floor by the groove's depth, the panel's edge by
 * what the panel is held. The height is that of the flats.
 */
export function openingOutline(width: number, height: number, head: Head): Outline {
  return {
    start: { x: 0, y: 0 },
    runs: [
      { kind: 'line', to: { x: width, y: 0 } },
      { kind: 'line', to: { x: width, y: height } },
      ...headRuns(width, height, head),
      { kind: 'line', to: { x: 0, y: 0 } },
    ],
  };
}

/** The head of an outline that came from an opening, for an edge that runs on alone: its flats and arc, or its top line. */
export function headOf(outline: Outline): Outline & { readonly open: true } {
  const [, right, ...rest] = outline.runs;
  return { start: right?.to ?? outline.start, runs: rest.slice(0, -1), open: true };
}
