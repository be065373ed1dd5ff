import { figureOperators } from '../pdf/drawing-pdf.ts';
import { number } from '../pdf/pdf-number.ts';
import { textOperators } from '../pdf/text-operators.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { StickerBody } from './sticker-body.ts';
import { lineWeight } from './sticker-drawing.ts';
import type { Head } from './sticker-head.ts';

/** The arrow's corners, in shares of its length and of its width. */
const ARROW = [
  [0, 0.38],
  [0.5, 0.38],
  [0.5, 0.12],
  [1, 0.5],
  [0.5, 0.88],
  [0.5, 0.62],
  [0, 0.62],
] as const;

/** A body as a page's operators from the sticker's corner, one text for each of its stickers; the arrow points to the door's top. */
export function bodyOperators(body: StickerBody, toward: 'up' | 'right', faces: Faces): string[] {
  const { head } = body;
  const arrow = arrowOperators(head.arrow, toward);
  return body.faces.map(({ runs, drawing }) => {
    const texts = [...head.runs, ...runs].map((run) => textOperators(run, faces));
    if (drawing === null) return [arrow, ...texts].join('\n');
    const { box, figure } = drawing;
    const place = { x: box.x, y: box.y, weight: lineWeight(box.height) };
    return [arrow, ...texts, figureOperators(figure, faces, place)].join('\n');
  });
}

function arrowOperators({ x, y, width, height }: Head['arrow'], toward: 'up' | 'right'): string {
  const path = ARROW.map(([along, across], k) => {
    const [dx, dy] = toward === 'up' ? [across * width, along * height] : [along * width, across * height];
    return `${number(x + dx)} ${number(y + dy)} ${k === 0 ? 'm' : 'l'}`;
  });
  return `${path.join(' ')} h f`;
}
