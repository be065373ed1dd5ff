import type { Figure, FigurePath, PathStroke, TextStroke } from '#core/drawing/figure.ts';
import { arcCurves } from './arc-curves.ts';
import type { Faces } from './typeface.ts';
import { number } from './pdf-number.ts';

/** Where a figure stands on a page, in points from the page's lower left corner. */
export interface FigurePlace {
  /** Its lower left corner. */
  readonly x: number;
  readonly y: number;
  /** Points for each unit of the figure; 1 where it was laid out in points. */
  readonly scale?: number;
  /** Points for each unit of line weight. Half suits a page, less a small drawing. */
  readonly weight?: number;
}

/** Line weights and dashes, as on screen. Paper knows no colour: what is cut now is told by its weight. */
const PENS: Readonly<
  Record<PathStroke['pen'], { readonly width: number; readonly dash: readonly number[] }>
> = {
  edge: { width: 1.8, dash: [] },
  hidden: { width: 1.2, dash: [6, 4] },
  fine: { width: 0.7, dash: [] },
  cut: { width: 3, dash: [] },
  centre: { width: 0.9, dash: [12, 4, 2, 4] },
  ghost: { width: 1.2, dash: [3, 2] },
  dimension: { width: 1.1, dash: [] },
  datum: { width: 1, dash: [] },
  none: { width: 0, dash: [] },
};

/** Hatching of cut wood, and the closer and heavier one, leaning the other way, of what is removed. */
const HATCHES = {
  section: { pitch: 6, width: 0.9, rising: true },
  waste: { pitch: 4, width: 1.2, rising: false },
} as const;

/** A laid-out figure as the operators of a page's stream: black, white and one light grey for tools. */
export function figureOperators(figure: Figure, faces: Faces, place: FigurePlace): string {
  const scale = place.scale ?? 1;
  const weight = place.weight ?? 0.5;
  const pen = {
    x: (x: number) => place.x + x * scale,
    y: (y: number) => place.y + (figure.height - y) * scale,
    scale,
    weight,
  };
  const strokes = figure.strokes.flatMap((stroke) =>
    stroke.kind === 'path' ? pathOf(stroke, pen) : textOf(stroke, faces, pen),
  );
  return ['q 1 J 1 j', ...strokes, 'Q'].join('\n');
}

interface Placing {
  readonly x: (x: number) => number;
  readonly y: (y: number) => number;
  readonly scale: number;
  readonly weight: number;
}

function pathOf(stroke: PathStroke, placing: Placing): string[] {
  const path = pathOperators(stroke.path, placing);
  const operators: string[] = [];
  if (stroke.fill === 'section' || stroke.fill === 'waste')
    operators.push(hatched(stroke.path, path, HATCHES[stroke.fill], placing));
  else if (stroke.fill === 'ink') operators.push(`${path} f`);
  else if (stroke.fill === 'paper' || stroke.fill === 'tool')
    operators.push(`${stroke.fill === 'paper' ? '1' : '0.85'} g ${path} f 0 g`);
  if (stroke.pen !== 'none') {
    const { width, dash } = PENS[stroke.pen];
    const dashes = dash.map((each) => number(each * placing.weight)).join(' ');
    const line = stroke.gapped === undefined ? path : pathOperators(stroke.gapped, placing);
    operators.push(`${number(width * placing.weight)} w [${dashes}] 0 d ${line} S`);
  }
  return operators;
}

function pathOperators(path: FigurePath, { x, y }: Placing): string {
  let from = { x: path.x, y: path.y };
  const steps = [`${number(x(from.x))} ${number(y(from.y))} m`];
  for (const run of path.runs) {
    if (run.kind !== 'arc')
      steps.push(`${number(x(run.x))} ${number(y(run.y))} ${run.kind === 'line' ? 'l' : 'm'}`);
    else
      for (const curve of arcCurves(from, run))
        steps.push(`${curve.map((at) => `${number(x(at.x))} ${number(y(at.y))}`).join(' ')} c`);
    from = { x: run.x, y: run.y };
  }
  if (path.closed) steps.push('h');
  return steps.join(' ');
}

/** Slanting lines over the box of a path, cut off at its outline. */
function hatched(
  path: FigurePath,
  outline: string,
  { pitch, width, rising }: (typeof HATCHES)[keyof typeof HATCHES],
  { x, y, weight }: Placing,
): string {
  const corners = outlinePoints(path).map((at) => ({ x: x(at.x), y: y(at.y) }));
  const left = Math.min(...corners.map((at) => at.x));
  const right = Math.max(...corners.map((at) => at.x));
  const bottom = Math.min(...corners.map((at) => at.y));
  const top = Math.max(...corners.map((at) => at.y));
  const high = top - bottom;
  const lines: string[] = [];
  const step = pitch * weight * Math.SQRT2;
  for (let start = left - high; start < right; start += step) {
    const [low, up] = rising ? [bottom, top] : [top, bottom];
    lines.push(`${number(start)} ${number(low)} m ${number(start + high)} ${number(up)} l`);
  }
  return `q 1 g ${outline} W f 0 g ${number(width * weight)} w [] 0 d ${lines.join(' ')} S Q`;
}

function outlinePoints(path: FigurePath): { x: number; y: number }[] {
  let from = { x: path.x, y: path.y };
  return [
    from,
    ...path.runs.flatMap((run) => {
      const points = run.kind !== 'arc' ? [run] : arcCurves(from, run).flat();
      from = { x: run.x, y: run.y };
      return points;
    }),
  ];
}

function textOf(stroke: TextStroke, faces: Faces, { x, y, scale }: Placing): string[] {
  if (stroke.text === '') return [];
  const face = stroke.bold ? faces.bold : faces.regular;
  const size = stroke.size * scale;
  const wide = face.width(stroke.text, size);
  const before = stroke.anchor === 'start' ? 0 : stroke.anchor === 'middle' ? wide / 2 : wide;
  const angle = (stroke.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const place =
    stroke.turn === 0
      ? `${number(x(stroke.x) - before)} ${number(y(stroke.y))} Td`
      : `${number(cos)} ${number(sin)} ${number(-sin)} ${number(cos)} ${number(x(stroke.x) - before * cos)} ${number(y(stroke.y) - before * sin)} Tm`;
  return [`BT /${stroke.bold ? 'B' : 'R'} ${number(size)} Tf ${place} ${face.encode(stroke.text)} Tj ET`];
}
