/** A width and a height in points. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A box in points, by its lower left corner. */
export interface Box extends Size {
  readonly x: number;
  readonly y: number;
}
