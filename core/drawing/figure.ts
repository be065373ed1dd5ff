import type { Fill, Pen } from './model.ts';

/** A laid-out figure: only these, in the medium's units (CSS px, or pt on paper), y down, inside width × height. */
export interface Figure {
  readonly width: number;
  readonly height: number;
  /** Medium units for each unit of the job: one ratio for every drawn length. */
  readonly scale: number;
  readonly title: string;
  readonly strokes: readonly Stroke[];
}

/** What a figure is made of: a path, or a run of text. */
export type Stroke = PathStroke | TextStroke;

/** A path with how it is drawn and filled. */
export interface PathStroke {
  readonly kind: 'path';
  /** Closed or open sub-paths; arcs already as circular arcs with their radius in medium units. */
  readonly path: FigurePath;
  /** The path with a gap wherever words stand in its way: what is drawn of its line; all of it when not given. */
  readonly gapped?: FigurePath;
  readonly pen: Pen | 'dimension' | 'datum';
  readonly fill: Fill;
  readonly role: string;
  readonly name?: string;
  readonly value?: string | number;
  readonly place?: string;
  /** A dimension over a break: shorter than its value. */
  readonly broken?: true;
}

/** A run of text of one size. */
export interface TextStroke {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  /** Height of the type in medium units; the text stands on the base line at y. */
  readonly size: number;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Degrees anticlockwise. */
  readonly turn: number;
  readonly role: string;
  readonly bold: boolean;
  readonly name?: string;
  readonly value?: string | number;
  readonly place?: string;
}

/** One stretch of a path in the medium’s units, from where the last one ended; an arc as SVG has it; a move leaves a gap. */
export type FigureRun =
  | { readonly kind: 'move'; readonly x: number; readonly y: number }
  | { readonly kind: 'line'; readonly x: number; readonly y: number }
  | {
      readonly kind: 'arc';
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly large: boolean;
      readonly sweep: boolean;
    };

/** A path in the medium’s units, y down. */
export interface FigurePath {
  readonly x: number;
  readonly y: number;
  readonly runs: readonly FigureRun[];
  readonly closed: boolean;
}
