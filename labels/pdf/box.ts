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

/** Does a point lie in a box, or on its edge? */
export function inside({ x, y }: { readonly x: number; readonly y: number }, box: Box): boolean {
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
}
