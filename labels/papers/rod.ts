import type { Area, Path, Point } from '#core/drawing/model.ts';
import { area, at, rectangle, stroke } from '#core/drawing/shapes.ts';
import type { Units } from '#core/length/units.ts';
import { say } from '#core/words/say.ts';
import { forDoors } from './for-doors.ts';
import { type FullSize, type Note, trueSize } from './full-size.ts';
import { pointsPer } from './paper-size.ts';

/** A rod before it is laid out: its length upright, its sight edge at the right; all in the job's units. */
export interface Rod {
  readonly title: string;
  readonly lines: readonly string[];
  readonly use: readonly string[];
  readonly doors: readonly string[];
  readonly units: Units;
  readonly length: number;
  readonly width: number;
  readonly outline: Path;
  readonly shapes: readonly Area[];
  readonly across: readonly RodLine[];
  /** Room for the words beside it, in points. */
  readonly words: number;
}

/** A line across the rod with its words. */
export interface RodLine {
  /** From the rod's lower end. */
  readonly at: number;
  readonly text: string;
}

/** What both papers have room for beside margins and leaders, in points. */
const ROOM = 497;

/**
 * A rod in true size. One wider than the paper leaves room for keeps its sight edge and loses its outer edge, which is
 * said on its first sheet: lengths are what a rod is for.
 */
export function rodSheets(rod: Rod): FullSize {
  const scale = pointsPer(rod.units);
  const cut = Math.max(0, rod.width - (ROOM - rod.words) / scale);
  // The lines across it go on a little beyond its sight edge.
  const edge = rod.width - cut + 6 / scale;
  const shapes = rodShapes(rod, cut, edge);
  const { figure, size, place } = trueSize({ title: rod.title, units: rod.units, shapes }, rod.units);
  const column = place(at(edge, 0)).x + 26;
  return {
    title: rod.title,
    doors: rod.doors,
    lines: [forDoors(rod.doors), ...rod.lines, ...(cut > 0 ? [say('paper.rod-cut-off')] : [])],
    use: rod.use,
    size: { width: Math.max(size.width, column + rod.words), height: size.height },
    figure,
    notes: rod.across.map((line): Note => ({ at: place(at(edge, line.at)), text: line.text, column })),
  };
}

/** The outline, what stands on the rod, and the lines across it; so much of its outer edge cut off. */
function rodShapes({ outline, width, length, shapes, across }: Rod, cut: number, edge: number): Area[] {
  const whole = cut === 0 ? outline : rectangle(cut, 0, width, length);
  return [
    area(moved(whole, cut), 'outline', 'none'),
    ...shapes
      .filter(({ path }) => cut === 0 || leftOf(path) >= cut)
      .map((each) => ({ ...each, path: moved(each.path, cut) })),
    ...across.map((line) => area(stroke(at(0, line.at), at(edge, line.at)), 'line-across', 'none', 'fine')),
  ];
}

/** A path so far to the left. */
function moved({ start, runs, ...rest }: Path, left: number): Path {
  const move = ({ x, y }: Point) => at(x - left, y);
  return {
    ...rest,
    start: move(start),
    runs: runs.map((run) =>
      run.kind === 'line'
        ? { kind: 'line', to: move(run.to) }
        : { ...run, to: move(run.to), centre: move(run.centre) },
    ),
  };
}

function leftOf(path: Path): number {
  return Math.min(path.start.x, ...path.runs.map(({ to }) => to.x));
}
