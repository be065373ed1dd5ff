import type { Outline, Run } from './outline.ts';

/** The arch over an opening, as the plan gives it: its chord, its rise, and its pivot below the flats. */
export interface ArchShape {
  readonly chord: number;
  readonly rise: number;
  readonly pivot: number;
}

/**
 * The sight line of one opening, anticlockwise from its bottom left corner at the origin: square, or with an arch over
 * its flats. The bead line is its offset by the bead, the groove's floor by the groove's depth, the panel's edge by
 * what the panel is held. The height is that of the flats.
 */
export function openingOutline(width: number, height: number, arch: ArchShape | null): Outline {
  const head: Run[] = [];
  if (arch !== null) {
    const flat = (width - arch.chord) / 2;
    if (flat > 0) head.push({ kind: 'line', to: { x: width - flat, y: height } });
    head.push({
      kind: 'arc',
      to: { x: flat, y: height },
      centre: { x: width / 2, y: height - arch.pivot },
      clockwise: false,
    });
    if (flat > 0) head.push({ kind: 'line', to: { x: 0, y: height } });
  } else head.push({ kind: 'line', to: { x: 0, y: height } });
  return {
    start: { x: 0, y: 0 },
    runs: [
      { kind: 'line', to: { x: width, y: 0 } },
      { kind: 'line', to: { x: width, y: height } },
      ...head,
      { kind: 'line', to: { x: 0, y: 0 } },
    ],
  };
}

/** The head of an outline that came from an opening, for an edge that runs on alone: its flats and arc, or its top line. */
export function headOf(outline: Outline): Outline & { readonly open: true } {
  const [, right, ...rest] = outline.runs;
  return { start: right?.to ?? outline.start, runs: rest.slice(0, -1), open: true };
}
