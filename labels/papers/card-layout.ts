import type { Size } from '../pdf/box.ts';
import type { Faces } from '../pdf/typeface.ts';
import { blocksOf, type CardType, type LeftOut, setWorks, type WorkSet } from './card-blocks.ts';
import type { CardStation } from './card-works.ts';
import { type Column, columnsIn, columnWidth, flowBlocks, type Placed } from './column-flow.ts';
import { bodyOf } from './paper-size.ts';

/** How a card is set: the height of its type, its columns, its settings a line each or one behind another. */
export interface CardLevel {
  readonly type: number;
  readonly columns: number;
  readonly settings: CardType['settings'];
  /** Its steps and cautions a paragraph each or one behind another. */
  readonly told: CardType['told'];
  /** Parts on a line each where that has room. */
  readonly close?: boolean;
  /** Height of the drawings at the head of the first page. */
  readonly drawn: number;
  /** Lines of notes at most, dangers always. */
  readonly notes: number;
}

/** From the most open to the closest: the first that keeps a card on two pages is taken. */
const LEVELS: readonly CardLevel[] = [
  { type: 8, columns: 3, settings: 'lines', told: 'lines', drawn: 320, notes: 12 },
  { type: 7.5, columns: 3, settings: 'lines', told: 'lines', drawn: 290, notes: 10 },
  { type: 7, columns: 3, settings: 'lines', told: 'lines', drawn: 260, notes: 8 },
  { type: 7, columns: 3, settings: 'run', told: 'lines', drawn: 240, notes: 8 },
  { type: 6.75, columns: 3, settings: 'run', told: 'run', drawn: 220, notes: 6 },
  { type: 6.5, columns: 3, settings: 'run', told: 'run', drawn: 190, notes: 6, close: true },
];
/** The smallest type, taken where else something had to be left to the screen. */
const CLOSEST: readonly [CardLevel, ...CardLevel[]] = [
  { type: 6.25, columns: 3, settings: 'run', told: 'run', drawn: 185, notes: 5, close: true },
  { type: 6, columns: 3, settings: 'run', told: 'run', drawn: 180, notes: 5, close: true },
];
const PAGES = 2;
/** Where not even the settings have room on two pages, which no known door comes to, the card goes on. */
const MOST_PAGES = 20;

/** What a card's columns are laid out with. */
export interface ToLayOut {
  readonly stations: readonly CardStation[];
  readonly paper: Size;
  readonly faces: Faces;
  /** At which height the first page's columns begin. */
  readonly startsAt: (level: CardLevel) => number;
  /** What has to stay free at the foot of the second page, the most first: the card comes before a long table. */
  readonly foots: readonly number[];
}

/** A card's works in their columns. */
export interface LaidOut {
  readonly level: CardLevel;
  readonly placed: readonly Placed[];
  readonly pages: number;
  /** At which height the columns of the last page end. */
  readonly endsAt: number;
  readonly leftOut: boolean;
}

const NOTHING: LeftOut = { steps: new Set(), cautions: new Set() };

/**
 * All works in columns on two pages: as open as they have room. Where they have none in type that can be read, steps are
 * left to the screen first, as few works' as will do: the longest before others, and last those that say how the piece lies
 * from one set-up to the next. Then cautions, the gravest of each stage never. Every setting stays.
 */
export function layOutCard(card: ToLayOut): LaidOut {
  for (const levels of [LEVELS, CLOSEST])
    for (const foot of card.foots)
      for (const level of levels) {
        const found = tryOut(card, level, setAt(card, level), NOTHING, foot);
        if (found !== null) return found;
      }
  const least = card.foots.at(-1) ?? 0;
  return leaveOut(card, CLOSEST[CLOSEST.length - 1] ?? CLOSEST[0], least);
}

function setAt(
  { stations, paper, faces }: ToLayOut,
  { type, columns, settings, told }: CardLevel,
): WorkSet[] {
  return setWorks(stations, {
    faces,
    type,
    settings,
    told,
    width: columnWidth(bodyOf(paper).width, columns),
  });
}

/** Leaves out as little as keeps the card on two pages. */
function leaveOut(card: ToLayOut, level: CardLevel, foot: number): LaidOut {
  const works = setAt(card, level);
  const longest = (of: (work: WorkSet) => number) =>
    [...works.keys()]
      .filter((k) => of(at(works, k)) > 0)
      .toSorted((a, b) => of(at(works, b)) - of(at(works, a)));
  const byLength = longest((work) => linesIn(work.steps));
  const turns = (k: number) => at(works, k).turns;
  const steps = [...byLength.filter((k) => !turns(k)), ...byLength.filter(turns)];
  const cautions = longest((work) => linesIn(work.cautions) - linesIn(work.gravest));
  const leaving = (count: number): LeftOut => ({
    steps: new Set(steps.slice(0, count)),
    cautions: new Set(cautions.slice(0, Math.max(0, count - steps.length))),
  });
  let [low, high] = [1, steps.length + cautions.length];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (tryOut(card, level, works, leaving(middle), foot) === null) low = middle + 1;
    else high = middle;
  }
  const found = tryOut(card, level, works, leaving(low), foot);
  return found ?? goOn(card, level, works, leaving(low));
}

function at(works: readonly WorkSet[], k: number): WorkSet {
  const work = works[k];
  if (work === undefined) throw new Error('a work that was set is there');
  return work;
}

function linesIn(paragraphs: readonly (readonly unknown[])[]): number {
  return paragraphs.reduce((sum, lines) => sum + lines.length, 0);
}

/** The works on two pages, or null where they have no room there; the last page's columns as even as they can be. */
function tryOut(
  card: ToLayOut,
  level: CardLevel,
  works: readonly WorkSet[],
  leftOut: LeftOut,
  foot: number,
): LaidOut | null {
  const blocks = blocksOf(works, leftOut);
  const put = (pages: number, raised: number) => flowBlocks(blocks, columnsOf(card, level, pages, raised));
  if (put(PAGES, foot) === null) return null;
  const pages = put(1, 0) === null ? PAGES : 1;
  let [low, high] = [pages === 1 ? 0 : foot, bodyOf(card.paper).height];
  while (high - low > 2) {
    const middle = (low + high) / 2;
    if (put(pages, middle) === null) high = middle;
    else low = middle;
  }
  const placed = put(pages, low) ?? [];
  return laidOut(card, level, placed, pages, leftOut);
}

/** Pages as many as it takes. */
function goOn(card: ToLayOut, level: CardLevel, works: readonly WorkSet[], leftOut: LeftOut): LaidOut {
  const placed = flowBlocks(blocksOf(works, leftOut), columnsOf(card, level, MOST_PAGES, 0));
  if (placed === null) throw new Error(`a card has room on ${MOST_PAGES} pages`);
  return laidOut(card, level, placed, Math.max(...placed.map(({ column }) => column.page + 1)), leftOut);
}

function laidOut(
  { paper }: ToLayOut,
  level: CardLevel,
  placed: readonly Placed[],
  pages: number,
  { steps, cautions }: LeftOut,
): LaidOut {
  const last = placed.filter(({ column }) => column.page === pages - 1).map(({ y }) => y);
  const body = bodyOf(paper);
  const endsAt = Math.min(body.y + body.height, ...last);
  return { level, placed, pages, endsAt, leftOut: steps.size + cautions.size > 0 };
}

/** The columns of so many pages; those of the last are raised from the foot. */
function columnsOf({ paper, startsAt }: ToLayOut, level: CardLevel, pages: number, raised: number): Column[] {
  const body = bodyOf(paper);
  return Array.from({ length: pages }, (_, page) => {
    const top = page === 0 ? startsAt(level) : body.y + body.height;
    const y = body.y + (page === pages - 1 ? raised : 0);
    return columnsIn({ ...body, y, height: Math.max(0, top - y) }, level.columns, page);
  }).flat();
}
