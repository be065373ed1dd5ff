import type { Language } from '../words/say.ts';
import type {
  Area,
  Dimension,
  Drawing,
  Figure,
  Stroke,
  FigurePath,
  FigureRun,
  Label,
  Path,
  Point,
} from './model.ts';
import { dimensionStrokes, dimensionWords } from './dimension-strokes.ts';
import { labelWords, TYPES } from './label-words.ts';
import { breakLines } from './break-lines.ts';
import { placeWords, type Words } from './place-words.ts';
import { symbolStrokes } from './symbol-strokes.ts';
import { type Reading, valueWidth, wordsWidth } from './value-text.ts';

/** The room that a figure has, in the units of its medium: CSS pixels on screen, points on paper. */
export interface LayoutOptions {
  readonly width: number;
  readonly height: number;
  /** Height of the type, in the medium's units. */
  readonly text: number;
  /** Names on dimensions beside their values. */
  readonly names?: boolean;
  readonly language?: Language;
  /** How values are read; when not given as on paper. */
  readonly reading?: Reading;
}

interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** From true size to the medium: one scale for every length; dimension rows and type in the medium's own units. */
export function layOut(drawing: Drawing, options: LayoutOptions): Figure {
  if (!drawing.shapes.some(({ kind }) => kind === 'dimension')) return layOutAs(drawing, options);
  const plainer: readonly Try[] = [
    { ...options, names: false },
    { ...options, names: false, text: options.text * 0.8, labels: options.text },
  ];
  const best = plainer.reduce<Try>(
    (kept, each) => (scaleOf(drawing, each) > scaleOf(drawing, kept) * ROOMIER ? each : kept),
    options,
  );
  return layOutAs(drawing, best);
}

/**
 * A drawing at a scale of the medium's choosing, in as much room as it then needs: how full-size templates are laid
 * out (72 for inches, 72/25.4 for millimetres on paper). `left` and `bottom` are the figure's place of the drawing's
 * lower left corner, from the figure's own lower left corner.
 */
export function layOutAtScale(
  drawing: Drawing,
  scale: number,
  options: Omit<LayoutOptions, 'width' | 'height'>,
): { readonly figure: Figure; readonly left: number; readonly bottom: number } {
  const bounds = boundsOf(drawing);
  const sides = sidesOf(drawing, options);
  const width = sides.left + sides.right + scale * (bounds.right - bounds.left);
  const height = sides.above + sides.below + scale * (bounds.top - bounds.bottom);
  return {
    figure: layOutAs(drawing, { ...options, width, height }, scale),
    left: sides.left,
    bottom: sides.below,
  };
}

/** Names on the dimensions are given up only where the drawing grows by this much without them. */
const ROOMIER = 1.6;

interface Try extends LayoutOptions {
  /** Height of the type of labels, which stays where that of the dimensions is made smaller. */
  readonly labels?: number;
}

/** The one scale at which a drawing and its dimensions fill the room. */
function scaleOf(drawing: Drawing, options: Try): number {
  const bounds = boundsOf(drawing);
  const sides = sidesOf(drawing, options);
  return Math.max(
    1e-6,
    Math.min(
      (options.width - sides.left - sides.right) / Math.max(1e-9, bounds.right - bounds.left),
      (options.height - sides.above - sides.below) / Math.max(1e-9, bounds.top - bounds.bottom),
    ),
  );
}

function layOutAs(drawing: Drawing, options: Try, fixed?: number): Figure {
  const { width, height, text, labels = text } = options;
  const bounds = boundsOf(drawing);
  const sides = sidesOf(drawing, options);
  const { pitch, named, language, onLeft, onRight, pads } = sides;
  const scale = fixed ?? scaleOf(drawing, options);
  const originX = sides.left + (width - sides.left - sides.right - scale * (bounds.right - bounds.left)) / 2;
  const originY =
    sides.above + (height - sides.above - sides.below - scale * (bounds.top - bounds.bottom)) / 2;
  const place = (point: Point): Point => ({
    x: originX + (point.x - bounds.left) * scale,
    y: originY + (bounds.top - point.y) * scale,
  });
  // Dimensions begin beyond the words that stand outside the drawing.
  const frame = {
    left: originX - pads.left,
    right: originX + scale * (bounds.right - bounds.left) + pads.right,
    top: originY - pads.above,
    bottom: originY + scale * (bounds.top - bounds.bottom) + pads.below,
  };
  const lines: Stroke[] = [];
  const labelled: Words[] = [];
  const valued: Words[] = [];
  const how = { pitch, text, width, names: named, language, units: drawing.units, onLeft, onRight };
  for (const shape of drawing.shapes)
    switch (shape.kind) {
      case 'area':
        lines.push(areaStroke(shape, place, scale));
        break;
      case 'label':
        labelled.push(labelWords(shape, place, { type: labels, scale, width }));
        break;
      case 'symbol':
        lines.push(...symbolStrokes(shape, place(shape.at), text));
        break;
      case 'dimension': {
        const dimension = dimensionStrokes(shape, place, frame, { ...how, reading: options.reading });
        lines.push(...dimension.lines);
        valued.push(dimension.words);
      }
    }
  const words = placeWords([...labelled, ...valued], lines, { width, height });
  const strokes = breakLines([...lines, ...words], fixed === undefined ? [] : CUT_ALONG);
  return { width, height, scale, title: drawing.title, strokes };
}

/** The pens of lines that are cut along at full size. */
const CUT_ALONG = ['edge', 'cut', 'centre'] as const;

/** The room that the dimensions need round a drawing, in the medium's units; it does not depend on the scale. */
function sidesOf(drawing: Drawing, options: Omit<Try, 'width' | 'height'>) {
  const { text } = options;
  const pads = padsOf(drawing, options.labels ?? text);
  const pitch = text * 1.7;
  const gap = text * 0.6;
  const language = options.language;
  const named = options.names ?? true;
  const rows = (side: Dimension['side']) =>
    Math.max(
      0,
      ...drawing.shapes.map((each) => (each.kind === 'dimension' && each.side === side ? each.row : 0)),
    );
  const across = (side: 'left' | 'right') =>
    columns(drawing, side, { text, names: named, language, units: drawing.units, reading: options.reading });
  const [onLeft, onRight] = [across('left'), across('right')];
  const upright = (side: 'above' | 'below', over: number) =>
    rows(side) === 0 ? gap : rows(side) * pitch + gap + over;
  return {
    pitch,
    language,
    named,
    onLeft,
    onRight,
    pads,
    left: pads.left + (onLeft.at(-1) ?? gap),
    right: pads.right + (onRight.at(-1) ?? gap),
    above: pads.above + upright('above', text * 0.7),
    below: pads.below + upright('below', text * 0.3),
  };
}

/** The room for words that are moved off the drawing's edges, in the medium's units. */
function padsOf(drawing: Drawing, type: number) {
  const most = (room: (label: Label, shift: Point) => number) =>
    Math.max(
      0,
      ...drawing.shapes.map((each) =>
        each.kind === 'label' && each.shift !== undefined ? room(each, each.shift) : 0,
      ),
    );
  const wide = ({ text, size }: Label) => wordsWidth(text, TYPES[size], size === 'large');
  const beside = (side: 1 | -1) => type * most((label, { x }) => (x * side > 0 ? x * side + wide(label) : 0));
  const over = (side: 1 | -1) =>
    type * most(({ size }, { y }) => (y * side > 0 ? y * side + TYPES[size] * 0.5 : 0));
  return { left: beside(-1), right: beside(1), above: over(1), below: over(-1) };
}

/** How far each row at a side stands out: beyond the texts of the rows before it. The last number is the room they all need. */
function columns(
  drawing: Drawing,
  side: 'left' | 'right',
  how: {
    readonly text: number;
    readonly names: boolean;
    readonly language: Language | undefined;
    readonly units: Drawing['units'];
    readonly reading: Reading | undefined;
  },
): number[] {
  const shapes = drawing.shapes.flatMap((each) =>
    each.kind === 'dimension' && each.side === side ? [each] : [],
  );
  if (shapes.length === 0) return [];
  const outs = [how.text];
  for (let row = 1; row <= Math.max(...shapes.map((each) => each.row)); row += 1) {
    const widths = shapes
      .filter((each) => each.row === row)
      .map((shape) => valueWidth(dimensionWords(shape, how), shape.value, how.text, how.units, how.reading));
    outs.push((outs.at(-1) ?? 0) + (widths.length === 0 ? 0 : Math.max(...widths) + how.text * 1.2));
  }
  return outs;
}

function boundsOf(drawing: Drawing): Bounds {
  const points = drawing.shapes.flatMap((shape) => {
    if (shape.kind === 'area') return pathPoints(shape.path);
    if (shape.kind === 'dimension') return [shape.from, shape.to];
    return [shape.at];
  });
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

/** Corners of a path, and the furthest points of its arcs. */
function pathPoints(path: Path): Point[] {
  let from = path.start;
  return [
    from,
    ...path.runs.flatMap((run) => {
      const begin = from;
      from = run.to;
      if (run.kind === 'line') return [run.to];
      const radius = Math.hypot(run.to.x - run.centre.x, run.to.y - run.centre.y);
      const [first, last] = run.clockwise ? [run.to, begin] : [begin, run.to];
      const start = Math.atan2(first.y - run.centre.y, first.x - run.centre.x);
      let sweep = Math.atan2(last.y - run.centre.y, last.x - run.centre.x) - start;
      if (sweep <= 0) sweep += 2 * Math.PI;
      const extremes = [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5]
        .map((k) => k * Math.PI)
        .filter((angle) => {
          const turn = angle - start;
          return turn > 0 && turn < sweep;
        });
      return [
        run.to,
        ...extremes.map((angle) => ({
          x: run.centre.x + radius * Math.cos(angle),
          y: run.centre.y + radius * Math.sin(angle),
        })),
      ];
    }),
  ];
}

function areaStroke(shape: Area, place: (point: Point) => Point, scale: number): Stroke {
  const start = place(shape.path.start);
  let from = shape.path.start;
  const runs = shape.path.runs.map((run): FigureRun => {
    const to = place(run.to);
    const begin = from;
    from = run.to;
    if (run.kind === 'line') return { kind: 'line', x: to.x, y: to.y };
    const radius = Math.hypot(run.to.x - run.centre.x, run.to.y - run.centre.y);
    const cross =
      (begin.x - run.centre.x) * (run.to.y - run.centre.y) -
      (begin.y - run.centre.y) * (run.to.x - run.centre.x);
    return {
      kind: 'arc',
      x: to.x,
      y: to.y,
      radius: radius * scale,
      large: run.clockwise ? cross > 0 : cross < 0,
      sweep: run.clockwise,
    };
  });
  const path: FigurePath = { x: start.x, y: start.y, runs, closed: shape.path.open !== true };
  return {
    kind: 'path',
    path,
    pen: shape.pen,
    fill: shape.fill,
    role: shape.role,
    ...(shape.place === undefined ? {} : { place: shape.place }),
  };
}
