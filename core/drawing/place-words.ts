import { type Box, insideBox, overlap, type Segment, touch } from './box.ts';
import type { PathStroke, Stroke } from './figure.ts';
import type { Point } from './model.ts';
import { boundsOf, type Piece, piecesOf } from './pieces.ts';
import { wordBoxes } from './word-box.ts';

/** Words with the places where they might stand, the best first. */
export interface Words {
  readonly places: readonly Point[];
  /** The words there. */
  readonly put: (where: Point) => Stroke[];
  /** Their own line, which may be broken behind them. */
  readonly own?: Stroke;
  /** They say what lies there: no line of an outline may come between them and their first place. */
  readonly bound?: true;
}

/** What it costs words to stand on something; each place after the first costs one more. */
const COSTS = {
  outside: 1000,
  word: 400,
  sign: 60,
  outline: 20,
  hidden: 6,
  dimension: 4,
  fine: 0.3,
} as const;

interface Obstacle {
  readonly stroke: Stroke;
  readonly pieces: readonly Piece[];
  readonly bounds: Box;
  readonly cost: number;
  readonly wall: boolean;
}

/** Puts words one after another where they stand on the least: on no other word, no outline, no tick where there is room. */
export function placeWords(
  wanted: readonly Words[],
  drawn: readonly Stroke[],
  room: { readonly width: number; readonly height: number },
): Stroke[] {
  const obstacles = drawn.flatMap(obstacleOf);
  const taken: Box[] = [];
  return wanted.flatMap((words) => {
    let [best, least] = [[] as Stroke[], Infinity];
    for (const [k, place] of words.places.entries()) {
      if (k >= least) break;
      if (k > 0 && words.bound === true && walled(words.places[0], place, obstacles)) continue;
      const strokes = words.put(place);
      const cost = k + costs(wordBoxes(strokes), words.own, obstacles, taken, room);
      if (cost < least) [best, least] = [strokes, cost];
    }
    taken.push(...wordBoxes(best));
    return best;
  });
}

function obstacleOf(stroke: Stroke): Obstacle[] {
  if (stroke.kind === 'text' || stroke.pen === 'none') return [];
  const pieces = piecesOf(stroke.path);
  const wall = stroke.pen === 'edge' || stroke.pen === 'cut';
  return [{ stroke, pieces, bounds: boundsOf(pieces), cost: costOf(stroke), wall }];
}

function costOf(stroke: PathStroke): number {
  if (stroke.fill === 'ink' || stroke.role === 'tick' || stroke.role === 'datum') return COSTS.sign;
  if (stroke.pen === 'edge' || stroke.pen === 'cut') return COSTS.outline;
  if (stroke.pen === 'hidden' || stroke.pen === 'centre' || stroke.pen === 'ghost') return COSTS.hidden;
  return stroke.pen === 'dimension' ? COSTS.dimension : COSTS.fine;
}

function costs(
  boxes: readonly Box[],
  own: Stroke | undefined,
  obstacles: readonly Obstacle[],
  taken: readonly Box[],
  { width, height }: { readonly width: number; readonly height: number },
): number {
  let all = 0;
  for (const box of boxes) {
    if (box.left < 0 || box.right > width || box.top < 0 || box.bottom > height) all += COSTS.outside;
    for (const other of taken) if (overlap(box, other)) all += COSTS.word;
    for (const { stroke, pieces, bounds, cost } of obstacles)
      if (stroke !== own && touch(bounds, box) && pieces.some((piece) => insideBox(piece, box) !== null))
        all += cost;
  }
  return all;
}

/** Does an outline lie between two places? */
function walled(from: Point | undefined, to: Point, obstacles: readonly Obstacle[]): boolean {
  if (from === undefined) return false;
  return obstacles.some(({ wall, pieces }) => wall && pieces.some((piece) => meet({ from, to }, piece)));
}

function meet(a: Segment, b: Segment): boolean {
  const side = ({ from, to }: Segment, { x, y }: Point) =>
    Math.sign((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x));
  return side(a, b.from) * side(a, b.to) < 0 && side(b, a.from) * side(b, a.to) < 0;
}
