import type { Outline, Run } from './outline.ts';

/** An arc over two flats, as the plan gives it: its chord, its rise, and its pivot below the flats. */
export interface Arch {
  readonly chord: number;
  readonly rise: number;
  readonly pivot: number;
  /** Each flat, where the plan prints it; else what the chord leaves of the width. */
  readonly flat?: number;
}

/** What an opening, a rail's sight edge or a panel has at its top: an arch, or null for a straight line. */
export type Head = Arch | null;

/** A head over this width at the height of its flats, from right to left, beginning where a side ends. The one place that knows how a head runs. */
export function headRuns(width: number, height: number, head: Head): Run[] {
  const left: Run = { kind: 'line', to: { x: 0, y: height } };
  if (head === null) return [left];
  const flat = head.flat ?? (width - head.chord) / 2;
  const right: Run = { kind: 'line', to: { x: width - flat, y: height } };
  const arc: Run = {
    kind: 'arc',
    to: { x: flat, y: height },
    centre: { x: width / 2, y: height - head.pivot },
    clockwise: false,
  };
  return flat > 0 ? [right, arc, left] : [arc];
}

/** The same from left to right: how a rail's sight edge runs, its wood above. */
export function headRunsBack(width: number, height: number, head: Head): Run[] {
  return headRuns(width, height, head)
    .toReversed()
    .map((run, k, runs) => {
      const to = runs[k + 1]?.to ?? { x: width, y: height };
      return run.kind === 'line' ? { ...run, to } : { ...run, to, clockwise: !run.clockwise };
    });
}

/** What is cut of a head that is not straight, over this width at this height, from left to right: its curve, without the flats beside it. */
export function headCurve(width: number, height: number, head: Arch): Outline & { readonly open: true } {
  const runs = headRunsBack(width, height, head);
  const from = runs.findIndex(({ kind }) => kind !== 'line');
  const curve = runs.filter(({ kind }) => kind !== 'line');
  return { start: runs[from - 1]?.to ?? { x: 0, y: height }, runs: curve, open: true };
}
