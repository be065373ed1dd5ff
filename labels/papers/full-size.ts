import { layOutAtScale } from '#core/drawing/layout.ts';
import type { Drawing, Point } from '#core/drawing/model.ts';
import type { Figure } from '#core/drawing/figure.ts';
import type { Units } from '#core/length/units.ts';
import type { Size } from '../pdf/box.ts';
import { pointsPer } from './paper-size.ts';

/** Something to be printed in true size over as many sheets as it needs. All places in points from its lower left corner. */
export interface FullSize {
  readonly title: string;
  /** The doors that it is for, on every sheet of it. */
  readonly doors: readonly string[];
  /** For which doors it is and what it shows. */
  readonly lines: readonly string[];
  /** How such a drawing is used: said once for several of them. */
  readonly use: readonly string[];
  readonly size: Size;
  readonly figure: Figure;
  readonly notes: readonly Note[];
  readonly pivot?: PivotPlace;
}

/** Words beside a point of the drawing. They stand whole on every sheet that has the point. */
export interface Note {
  readonly at: Point;
  readonly text: string;
  /** In a column of their own with a leader from the point, or right beside it. */
  readonly column?: number;
  /** How far below the point, in points. */
  readonly below?: number;
}

/** One that is drawn when its turn comes. */
export type FullSizeDraft = () => FullSize;

/** Where the trammel's pivot lies, on the paper or off it. */
export interface PivotPlace {
  readonly at: Point;
  /** Beside its cross. */
  readonly text: string;
  /** In words, for where it is not on the paper. */
  readonly where: string;
}

/** A drawing of areas alone, in true size, and where its points come to lie. Its lower left corner must be at the origin. */
export function trueSize(
  drawing: Drawing,
  units: Units,
): { readonly figure: Figure; readonly size: Size; readonly place: (point: Point) => Point } {
  const scale = pointsPer(units);
  const { figure, left, bottom } = layOutAtScale(drawing, scale, { text: TEXT });
  return {
    figure,
    size: { width: figure.width, height: figure.height },
    place: ({ x, y }) => ({ x: left + x * scale, y: bottom + y * scale }),
  };
}

/** Height of type on full-size papers; the layout leaves a little of it free round a drawing. */
export const TEXT = 8;
