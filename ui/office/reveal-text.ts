import { isTree } from '#core/fields/read-shape.ts';
import { eachSide, type EachSide, SIDES } from '#core/plan/each-side.ts';

/** The path of one side's own reveal. */
export type RevealSide = `reveal.${keyof EachSide<string>}`;
export const REVEAL_SIDES: readonly RevealSide[] = SIDES.map((side) => `reveal.${side}` as const);

/** Is this path one side's own reveal? */
export function isRevealSide(path: string): path is RevealSide {
  return (REVEAL_SIDES as readonly string[]).includes(path);
}

/** The reveal as a form has it: one length for all sides, and of each side its own; empty where it has none. */
export interface RevealText {
  readonly all: string;
  readonly sides: EachSide<string>;
}

/** The reveal as a job file says it: one length, or each side's; undefined where nothing is typed. */
export function revealTree({ all, sides }: RevealText): unknown {
  const own = SIDES.filter((side) => sides[side].trim() !== '');
  if (own.length === 0) return all.trim() === '' ? undefined : all.trim();
  const said = all.trim() === '' ? own : SIDES;
  return Object.fromEntries(said.map((side) => [side, sides[side].trim() || all.trim()]));
}

/**
 * The same read from a job file. What the most sides share is the length for all, so that only those that differ stand
 * beside it; `usual` is that of a side that the file leaves out, and where it says none, each side stands for itself.
 */
export function revealText(said: unknown, usual = ''): RevealText {
  if (!isTree(said)) return { all: textOf(said) || usual, sides: eachSide(() => '') };
  const sides = eachSide((side) => textOf(said[side]));
  if (usual === '' && SIDES.some((side) => sides[side] === '')) return { all: '', sides };
  const full = eachSide((side) => sides[side] || usual);
  const shared = (side: keyof typeof full) => SIDES.filter((other) => full[other] === full[side]).length;
  const common = SIDES.reduce((best, side) => (shared(side) > shared(best) ? side : best));
  const all = full[common];
  return { all, sides: eachSide((side) => (full[side] === all ? '' : full[side])) };
}

function textOf(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

/** The texts of a reveal among others by path. */
export function revealIn(texts: Readonly<Record<RevealSide | 'reveal', string>>): RevealText {
  return { all: texts.reveal, sides: eachSide((side) => texts[`reveal.${side}`]) };
}

/** The same as texts by path. */
export function revealPaths({ all, sides }: RevealText): Record<RevealSide | 'reveal', string> {
  return {
    reveal: all,
    'reveal.left': sides.left,
    'reveal.right': sides.right,
    'reveal.bottom': sides.bottom,
    'reveal.top': sides.top,
  };
}
