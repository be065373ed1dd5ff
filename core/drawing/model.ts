import type { Outline, Point } from '../outline/outline.ts';
import type { Units } from '../length/units.ts';

export type { Point, Run } from '../outline/outline.ts';

/** An outline, or a stretch of one: closed unless said otherwise. */
export interface Path extends Outline {
  readonly open?: true;
}

/**
 * How a line is drawn: an edge one sees, an edge behind, a construction line, a cut to be made now, a centre line; and
 * the ghost of a finished line that is reached later, beside which the machine is set.
 */
export type Pen = 'edge' | 'hidden' | 'fine' | 'cut' | 'centre' | 'ghost' | 'none';

/** How an area is filled. `waste` is what is removed now; `section` is hatched as cut wood; `tool` is a blade, cutter or fence. */
export type Fill = 'none' | 'paper' | 'wood' | 'section' | 'waste' | 'tool' | 'ink';

/** An outline or a stretch of one, with how it is drawn and filled. */
export interface Area {
  readonly kind: 'area';
  readonly path: Path;
  readonly pen: Pen;
  readonly fill: Fill;
  /** What this is, for tests and assistive tools: "outline", "mortise", "bead", "blade", "stop" … */
  readonly role: string;
  /** The place (as in the plan) that it belongs to. */
  readonly place?: string;
}

/**
 * A dimension line between two points. It stands `row` rows away from the drawing on the given side (row 1 nearest;
 * row 0 stands on the points themselves). Its value is the plan's printed value, never reckoned from the drawing.
 */
export interface Dimension {
  readonly kind: 'dimension';
  readonly from: Point;
  readonly to: Point;
  readonly side: 'above' | 'below' | 'left' | 'right' | 'along';
  readonly row: number;
  readonly name: string;
  readonly value: string | number;
  readonly place?: string;
  /** True where `from` is the datum that the setting is measured from: drawn as such. */
  readonly datum?: boolean;
  /**
   * Where a stretch of the member is left out between its ends, along the line: it is drawn with a break there and is
   * shorter than its value says. All others are drawn in the drawing's one scale.
   */
  readonly brokenAt?: number;
  /** Where the middle of its value stands, of one along its own line; beside the line's middle when not given. */
  readonly valueAt?: Point;
  /** Its name stays beside its value even where others give theirs up for a larger drawing. */
  readonly keepName?: true;
  /** Of a stage that may have a name of its own for it. */
  readonly stage?: string;
  /** The machine is set so, beside a finished line: it is named as set. */
  readonly isSet?: true;
}

/** Words at a point, in type of the medium’s own size. */
export interface Label {
  readonly kind: 'label';
  readonly at: Point;
  readonly text: string;
  readonly size: 'small' | 'normal' | 'large';
  readonly anchor: 'start' | 'middle' | 'end';
  readonly role: string;
  /** The height in true size that it has to stand within: its type is made smaller where the scale leaves it less. */
  readonly within?: number;
  /** The width in true size that it has to stand within, likewise. */
  readonly across?: number;
  /**
   * Moved off its point by so many heights of the medium's type, x to the right and y up: for words outside the drawing,
   * which leaves them room there before its dimensions.
   */
  readonly shift?: Point;
  /** Read upwards where it is larger so: in what is tall and narrow. Its type may then fill the width that it stands in. */
  readonly mayTurn?: true;
  /** On a white ground, where it stands on hatching or over lines. */
  readonly ground?: true;
}

/** A sign of fixed size on paper or screen, wherever the drawing's scale puts it. */
export interface Symbol {
  readonly kind: 'symbol';
  readonly at: Point;
  readonly symbol:
    | 'arrow-up'
    | 'arrow-down'
    | 'arrow-left'
    | 'arrow-right'
    | 'pivot'
    | 'face-side'
    | 'face-edge'
    | 'face-edge-below'
    | 'stop';
  readonly role: string;
}

/** Anything that stands in a drawing. */
export type Shape = Area | Dimension | Label | Symbol;

/**
 * The one drawing model. A drawing holds a part or a door in true size, in the job's units: x to the right, y up.
 * It is laid out once (layout.ts) into a figure of plain paths and text in the units of the medium; the SVG renderer
 * here and the PDF renderer of the labels both draw that figure and decide nothing.
 */
export interface Drawing {
  readonly title: string;
  readonly units: Units;
  readonly shapes: readonly Shape[];
}
