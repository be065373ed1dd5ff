import type { Box } from './box.ts';
import type { Stroke, TextStroke } from './figure.ts';
import { wordsWidth } from './type-width.ts';

/** The rooms that words take: the white ground of one that has it, and the letters of each without. */
export function wordBoxes(strokes: readonly Stroke[]): Box[] {
  return strokes.flatMap((stroke): Box[] => {
    if (stroke.kind === 'text') return stroke.name === undefined ? [lettersBox(stroke)] : [];
    if (stroke.role !== 'ground') return [];
    const points = [stroke.path, ...stroke.path.runs];
    const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
    return [{ left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) }];
  });
}

function lettersBox(stroke: TextStroke): Box {
  const wide = wordsWidth(stroke.text, stroke.size, stroke.bold);
  const [up, down] = [stroke.size * 0.8 + 1, stroke.size * 0.25];
  const before = stroke.anchor === 'start' ? 0 : stroke.anchor === 'end' ? wide : wide / 2;
  if (stroke.turn === 0)
    return {
      left: stroke.x - before - 1,
      right: stroke.x - before + wide + 1,
      top: stroke.y - up,
      bottom: stroke.y + down,
    };
  // Turned by a quarter: read upwards.
  return {
    left: stroke.x - up,
    right: stroke.x + down,
    top: stroke.y + before - wide - 1,
    bottom: stroke.y + before + 1,
  };
}
