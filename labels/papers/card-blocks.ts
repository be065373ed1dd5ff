import { stationName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { CardLine } from './card-settings.ts';
import type { CardCaution } from './card-cautions.ts';
import type { CardStep } from './card-steps.ts';
import type { CardMember, CardStation, CardWork } from './card-works.ts';
import type { Block, ColumnLine } from './column-flow.ts';
import { type Paragraph, type Piece, setParagraph, type Words } from './set-paragraph.ts';

/** How a card's works are set: the type's height, the columns' width, and one setting a line or one behind another. */
export interface CardType {
  readonly faces: Faces;
  readonly type: number;
  readonly width: number;
  readonly settings: 'lines' | 'run';
  /** Steps and cautions a paragraph each, or one behind another. */
  readonly told: 'lines' | 'run';
}

/** From one line to the next, for each height of type. */
const LEADING = { lines: 1.2, run: 1.15 } as const;

/** Smaller type than this is not read at a machine. */
export const LEAST = 6;

/** Settings one behind another, and settings behind the name of what they are for. */
const RUN = { indent: 6, turn: 0, hang: 6, apart: 2.5 };
const BEHIND = { indent: 6, turn: 6, hang: 10, apart: 2.5 };

/** A work set in type, so that what has no room can be left out of it. */
export interface WorkSet {
  /** Its station's name, where it is the first there. */
  readonly heading: readonly ColumnLine[];
  /** Title, parts and every setting. */
  readonly settings: readonly (readonly ColumnLine[])[];
  readonly steps: readonly (readonly ColumnLine[])[];
  /** Does the piece lie otherwise from one of its set-ups to the other? */
  readonly turns: boolean;
  /** What stands in place of steps that had no room. */
  readonly stepsThere: readonly ColumnLine[];
  readonly cautions: readonly (readonly ColumnLine[])[];
  /** The gravest alone. */
  readonly gravest: readonly (readonly ColumnLine[])[];
  /** What stands over the rest of it in another column. */
  readonly rest: readonly ColumnLine[];
}

/** Every work of a card, set in type. */
export function setWorks(stations: readonly CardStation[], set: CardType): WorkSet[] {
  return stations.flatMap(({ station, works }) =>
    works.map((work, k) => ({
      heading: k === 0 ? headingOf(stationName(station), set) : [],
      settings: [titleLines(work, set), ...settingsOf(work, set)].filter((lines) => lines.length > 0),
      steps: toldLines(
        '–',
        work.how.map((step) => stepWords(step, set)),
        set,
      ),
      turns: work.turns,
      stepsThere: stepLines(say('paper.card-steps-there', { steps: say('ui.how') }), set),
      cautions: cautionLines(work.cautions, set),
      gravest: cautionLines(
        work.cautions.filter(({ gravest }) => gravest),
        set,
      ),
      rest: paragraph([[bold(say('paper.card-rest', { title: work.title }), set.type)]], set, {}),
    })),
  );
}

/** Which works' steps, and which works' cautions but the gravest, are left to the screen. */
export interface LeftOut {
  readonly steps: ReadonlySet<number>;
  readonly cautions: ReadonlySet<number>;
}

/** The works as blocks for the columns; a title stays with the first of what stands under it. */
export function blocksOf(works: readonly WorkSet[], { steps, cautions }: LeftOut): Block[] {
  return works.flatMap((work, k) => {
    const told = cautions.has(k) ? work.gravest : work.cautions;
    const how = steps.has(k) && work.steps.length > 0 ? [work.stepsThere] : work.steps;
    const [title = [], first = [], ...rest] = [...work.settings, ...how, ...told];
    return [
      { lines: [...work.heading, ...title, ...first], above: work.heading.length > 0 ? 7 : 5 },
      ...rest.map((lines) => ({ lines, rest: work.rest })),
    ];
  });
}

function headingOf(text: string, { type, width, faces }: CardType): ColumnLine[] {
  const size = type + 3;
  return setParagraph([[{ text, size, weight: 'bold' }]], { faces, width, pitch: size * 1.45 }).map(
    (line, k) => ({ ...line, ruled: k === 0 }),
  );
}

function titleLines({ title, parts }: CardWork, set: CardType): ColumnLine[] {
  const { type } = set;
  return paragraph([[bold(title, type + 0.75)], [regular(parts, type)]], set, {
    hang: 6,
    pitch: type * 1.32,
  });
}

/** What all set-ups of a work have in common, then each set-up with what it has for itself. */
function settingsOf({ lines, groups }: CardWork, set: CardType): ColumnLine[][] {
  return [
    ...commonLines(lines, set),
    ...groups.flatMap((group) => [
      ...commonLines(group.lines, { ...set, settings: 'run' }),
      ...group.members.map((member) => memberLines(member, set)),
    ]),
  ].filter((all) => all.length > 0);
}

/** What several set-ups have in common. */
function commonLines(lines: readonly CardLine[], set: CardType): ColumnLine[][] {
  const legend = lines.filter(({ value }) => value === '');
  const shared = runsOf(
    lines.filter(({ value }) => value !== ''),
    ({ place }) => place,
  );
  return [legendLines(legend, set), ...shared.flatMap((alike) => placeLines(alike, set))];
}

/** What follows each other and has a text alike. */
function runsOf(lines: readonly CardLine[], textOf: (line: CardLine) => string): CardLine[][] {
  const runs: CardLine[][] = [];
  for (const line of lines) {
    const run = runs.at(-1);
    if (run?.[0] !== undefined && textOf(run[0]) === textOf(line)) run.push(line);
    else runs.push([line]);
  }
  return runs;
}

/** What settings are measured from whose values stand with each set-up. */
function legendLines(legend: readonly CardLine[], set: CardType): ColumnLine[] {
  const pieces = runsOf(legend, ({ from }) => from).map((alike): Piece => {
    const names = alike.map(({ place, name }) => (place === '' ? name : `${place}, ${name}`)).join(', ');
    return [regular(`${names}:`, set.type), small(alike[0]?.from ?? '', set)];
  });
  return paragraph(pieces, set, RUN);
}

/** The settings of a place behind its name; those of no place a line each, or one behind another. */
function placeLines(alike: readonly CardLine[], set: CardType): ColumnLine[][] {
  const place = alike[0]?.place ?? '';
  const own = alike.map((line) => ({ ...line, place: '' }));
  const groups = runsOf(own, ({ from }) => from);
  if (place !== '' || set.settings === 'run')
    return [
      paragraph(
        [[bold(place, set.type)], ...groups.flatMap((group) => groupPieces(group, set))],
        set,
        place === '' ? RUN : BEHIND,
      ),
    ];
  return groups.flatMap((group) => groupLines(group, set));
}

/** A set-up: which it is, and behind that its settings. */
function memberLines({ title, parts, lines }: CardMember, set: CardType): ColumnLine[] {
  const { type } = set;
  const pieces = runsOf(lines, ({ from }) => from).flatMap((group) => groupPieces(group, set));
  return paragraph([[bold(title, type), regular(parts, type)], ...pieces], set, BEHIND);
}

/** Settings a line each, headed once by what they are measured from; one alone has it behind its value. */
function groupLines(group: readonly CardLine[], set: CardType): ColumnLine[][] {
  const from = group[0]?.from ?? '';
  if (group.length === 1 || from === '') return group.map((line) => paragraph([piece(line, set)], set, RUN));
  return [
    paragraph([[small(from, set)]], set, RUN),
    ...group.map((line) => paragraph([piece({ ...line, from: '' }, set)], set, { ...RUN, indent: 12 })),
  ];
}

/** Settings one behind another, what they are measured from once before them; the place before the first of each. */
function groupPieces(group: readonly CardLine[], set: CardType): Piece[] {
  const from = group[0]?.from ?? '';
  const headed = group.length > 1 && from !== '';
  const pieces = group.map((line, k) => {
    const placed = line.place !== '' && line.place !== group[k - 1]?.place;
    const name = placed ? `${line.place}: ${line.name}` : line.name;
    return piece({ ...line, name, from: headed ? '' : from }, set);
  });
  return headed ? [[small(`${from}:`, set)], ...pieces] : pieces;
}

function piece({ name, value, from }: CardLine, set: CardType): Piece {
  return [
    regular(name, set.type),
    ...(value === '' ? [] : [{ ...bold(value, set.type + 0.5), solid: true as const }]),
    ...(from === '' ? [] : [small(from, set)]),
  ];
}

/** A step, behind the parts that it is for where it is not for all. */
function stepWords({ parts, text }: CardStep, { type }: CardType): Piece {
  return [regular(parts === '' ? '' : `${parts}:`, type), regular(text, type)];
}

/** What stands in place of steps. */
function stepLines(text: string, set: CardType): ColumnLine[] {
  return toldLines('–', [[regular(text, set.type)]], set).flat();
}

/** What can hurt. */
function cautionLines(cautions: readonly CardCaution[], set: CardType): ColumnLine[][] {
  return toldLines(
    '!',
    cautions.map(({ text }) => [regular(text, set.type)]),
    set,
  );
}

/** Sentences each behind a sign: a paragraph each, or one behind another and broken between any two of their lines. */
function toldLines(sign: '–' | '!', pieces: readonly Piece[], set: CardType): ColumnLine[][] {
  const { type } = set;
  const weight = sign === '!' ? 'bold' : 'regular';
  if (set.told === 'lines') {
    const before = { text: sign, x: 6, size: type, weight } as const;
    return pieces.map((words) => paragraph([words], set, { indent: 13, sign: before }));
  }
  const signed = pieces.map((words): Piece => [{ text: sign, size: type, weight }, ...words]);
  return paragraph(signed, set, { indent: 6, apart: 1.6, filled: true }).reduce<ColumnLine[][]>(inPairs, []);
}

/** No line of a paragraph stands alone in a column, neither its first nor its last. */
function inPairs(blocks: ColumnLine[][], line: ColumnLine, k: number, all: ColumnLine[]): ColumnLine[][] {
  const stays = k === 1 || (k > 1 && k === all.length - 1);
  const last = blocks.at(-1);
  return stays && last !== undefined ? [...blocks.slice(0, -1), [...last, line]] : [...blocks, [line]];
}

function paragraph(
  pieces: readonly Piece[],
  { faces, width, type, told }: CardType,
  more: Partial<Paragraph>,
): ColumnLine[] {
  const written = pieces
    .map((words) => words.filter(({ text }) => text !== ''))
    .filter((words) => words.length > 0);
  return written.length === 0
    ? []
    : setParagraph(written, { faces, width, pitch: type * LEADING[told], ...more });
}

function bold(text: string, size: number): Words {
  return { text, size, weight: 'bold' };
}

function regular(text: string, size: number): Words {
  return { text, size, weight: 'regular' };
}

function small(text: string, { type }: CardType): Words {
  return regular(text, Math.max(LEAST, type - 1));
}
