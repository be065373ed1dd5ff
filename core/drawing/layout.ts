import { areaStroke } from './area-stroke.ts';
import type { Box } from './box.ts';
import { breakLines } from './break-lines.ts';
import { type Dimensioning, dimensionStrokes } from './dimension-strokes.ts';
import { type Bounds, drawingBounds } from './drawing-bounds.ts';
import { labelWords } from './label-words.ts';
import { type Lettering, type Margins, marginsOf, writingOf } from './margins.ts';
import type { Drawing, Point } from './model.ts';
import type { Figure, PathStroke } from './figure.ts';
import { placeWords, type Words } from './place-words.ts';
import { symbolStrokes } from './symbol-strokes.ts';

/** The room that a figure has, in the units of its medium: CSS pixels on screen, points on paper. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

export type LayoutOptions = Room & Omit<Lettering, 'labels'>;

/** Names on the dimensions are given up only where the drawing grows by this much without them. */
const ROOMIER = 1.6;

/** The pens of lines that are cut along at full size. */
const CUT_ALONG = ['edge', 'cut', 'centre'] as const;

/** From true size to the medium: one scale for every length; dimension rows and type in the medium's own units. */
export function layOut(drawing: Drawing, options: LayoutOptions): Figure {
  const lettering = roomiest(drawing, options);
  const margins = marginsOf(drawing, lettering);
  const scale = scaleOf(drawingBounds(drawing), margins, options);
  const strokes = breakLines(strokesOf(drawing, margins, lettering, options, scale));
  return { width: options.width, height: options.height, scale, title: drawing.title, strokes };
}

/**
 * A drawing at a scale of the medium's choosing, in as much room as it then needs: how full-size templates are laid
 * out (72 for inches, 72/25.4 for millimetres on paper). `left` and `bottom` are the figure's place of the drawing's
 * lower left corner, from the figure's own lower left corner.
 */
export function layOutAtScale(
  drawing: Drawing,
  scale: number,
  lettering: Omit<Lettering, 'labels'>,
): { readonly figure: Figure; readonly left: number; readonly bottom: number } {
  const bounds = drawingBounds(drawing);
  const margins = marginsOf(drawing, lettering);
  const { left, right, above, below } = margins.sides;
  const width = left + right + scale * (bounds.right - bounds.left);
  const height = above + below + scale * (bounds.top - bounds.bottom);
  const strokes = breakLines(strokesOf(drawing, margins, lettering, { width, height }, scale), CUT_ALONG);
  return { figure: { width, height, scale, title: drawing.title, strokes }, left, bottom: below };
}

/** The lettering as it is asked for, or without names and smaller where the drawing becomes much larger so. */
function roomiest(drawing: Drawing, options: LayoutOptions): Lettering {
  if (!drawing.shapes.some(({ kind }) => kind === 'dimension')) return options;
  const bounds = drawingBounds(drawing);
  const scale = (each: Lettering) => scaleOf(bounds, marginsOf(drawing, each), options);
  const plainer: readonly Lettering[] = [
    { ...options, names: false },
    { ...options, names: false, text: options.text * 0.8, labels: options.text },
  ];
  return plainer.reduce<Lettering>(
    (kept, each) => (scale(each) > scale(kept) * ROOMIER ? each : kept),
    options,
  );
}

/** The one scale at which a drawing and its dimensions fill the room. */
function scaleOf(bounds: Bounds, { sides }: Margins, { width, height }: Room): number {
  return Math.max(
    1e-6,
    Math.min(
      (width - sides.left - sides.right) / Math.max(1e-9, bounds.right - bounds.left),
      (height - sides.above - sides.below) / Math.max(1e-9, bounds.top - bounds.bottom),
    ),
  );
}

/** Every stroke of a drawing, the words last, where they are least in the way. */
function strokesOf(drawing: Drawing, margins: Margins, lettering: Lettering, room: Room, scale: number) {
  const { text, labels = text } = lettering;
  const { place, frame } = placingOf(drawingBounds(drawing), margins, room, scale);
  const how: Dimensioning = { ...margins.rows, ...writingOf(drawing, lettering), width: room.width };
  const lines: PathStroke[] = [];
  const labelled: Words[] = [];
  const valued: Words[] = [];
  for (const shape of drawing.shapes)
    if (shape.kind === 'area') lines.push(areaStroke(shape, place, scale));
    else if (shape.kind === 'label')
      labelled.push(labelWords(shape, place, { type: labels, scale, width: room.width }));
    else if (shape.kind === 'symbol') lines.push(...symbolStrokes(shape, place(shape.at), text));
    else {
      const dimension = dimensionStrokes(shape, place, frame, how);
      lines.push(...dimension.lines);
      valued.push(dimension.words);
    }
  return [...lines, ...placeWords([...labelled, ...valued], lines, room)];
}

/** Where the drawing's points come to lie, in the middle of the room; and its frame, beyond which its dimensions begin. */
function placingOf(
  bounds: Bounds,
  { sides, pads }: Margins,
  { width, height }: Room,
  scale: number,
): { readonly place: (point: Point) => Point; readonly frame: Box } {
  const [wide, high] = [scale * (bounds.right - bounds.left), scale * (bounds.top - bounds.bottom)];
  const x = sides.left + (width - sides.left - sides.right - wide) / 2;
  const y = sides.above + (height - sides.above - sides.below - high) / 2;
  return {
    place: (point) => ({ x: x + (point.x - bounds.left) * scale, y: y + (bounds.top - point.y) * scale }),
    frame: {
      left: x - pads.left,
      right: x + wide + pads.right,
      top: y - pads.above,
      bottom: y + high + pads.below,
    },
  };
}
