import { stationName } from '#core/telling/names.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { Size } from '../pdf/box.ts';
import type { CardLine } from './card-settings.ts';
import type { CardStation } from './card-stations.ts';
import { type Block, type ColumnLine, columnWidth, flowBlocks } from './column-flow.ts';
import type { PaperPage } from './paper-page.ts';
import { wrapLines } from './text-lines.ts';

/**
 * How the settings are set, from the most open to the closest: the first that keeps them on one page, else the last.
 * Where not even small type does, the steps of short work are left to the screens, those of longer work at last too.
 */
const SETTINGS = [
  { type: 7.5, columns: 3, steps: 1 },
  { type: 7, columns: 3, steps: 1 },
  { type: 7, columns: 4, steps: 1 },
  { type: 7, columns: 4, steps: 6 },
  { type: 6.5, columns: 4, steps: 7 },
  { type: 7, columns: 4, steps: Number.POSITIVE_INFINITY },
  { type: 6.5, columns: 4, steps: Number.POSITIVE_INFINITY },
] as const;
const LEAST = 6;

interface Set {
  readonly faces: Faces;
  readonly type: number;
  readonly width: number;
  /** How many steps work has at least to have them on the card. */
  readonly steps: number;
}

/** All settings of a door by station, in columns, on as few pages as legible type allows. */
export function settingPages(
  stations: readonly CardStation[],
  paper: Size,
  faces: Faces,
  open: (page: PaperPage) => void,
): PaperPage[] {
  const tries = SETTINGS.map(({ type, columns, steps }) => () => {
    const set: Set = { faces, type, width: columnWidth(paper, columns), steps };
    const blocks = stations.flatMap((station) => stationBlocks(station, set));
    return flowBlocks(blocks, paper, columns, faces, open);
  });
  let pages: PaperPage[] = [];
  for (const each of tries) {
    pages = each();
    if (pages.length <= 1) break;
  }
  return pages;
}

function stationBlocks({ station, stages }: CardStation, set: Set): Block[] {
  const { faces, type, width } = set;
  const heading: ColumnLine = {
    runs: [{ text: stationName(station), x: 0, size: 11, weight: 'bold' }],
    height: 17,
    ruled: true,
  };
  const blocks = stages.map(({ title, parts, lines, how, steps }): Block => {
    const names = wrapLines(parts, faces.regular, type, width);
    return [
      { runs: [{ text: title, x: 0, size: type + 1, weight: 'bold' }], height: type * 1.55 },
      ...names.map((text) => plain(text, 0, type)),
      ...groupLines(lines, set),
      ...(steps < set.steps ? [] : how).flatMap((line) => howLines(line, set)),
      { runs: [], height: 4 },
    ];
  });
  const [first = [], ...rest] = blocks;
  return [[heading, ...first], ...rest];
}

function plain(text: string, x: number, size: number): ColumnLine {
  return { runs: [{ text, x, size, weight: 'regular' }], height: size * 1.2 };
}

/** Settings that follow each other and are measured from the same are headed by it once; one alone has it behind its value. */
function groupLines(lines: readonly CardLine[], set: Set): ColumnLine[] {
  const groups: CardLine[][] = [];
  for (const line of lines) {
    const last = groups.at(-1);
    if (last?.[0]?.from === line.from) last.push(line);
    else groups.push([line]);
  }
  return groups.flatMap((group) => {
    const from = group[0]?.from ?? '';
    if (group.length === 1 || from === '') return group.flatMap((line) => settingLines(line, set));
    return [
      ...fromLines(from, 6, set),
      ...group.flatMap((line) => settingLines({ ...line, from: '' }, set, 12)),
    ];
  });
}

/** Name and value on one line, or a long name on several; what it is measured from behind the value or on the next. */
function settingLines({ name, value, from }: CardLine, set: Set, indent = 6): ColumnLine[] {
  const { faces, type, width } = set;
  const small = Math.max(LEAST, type - 1);
  const names = wrapLines(name, faces.regular, type, width - indent);
  const wide = faces.bold.width(`${value} `, type + 0.5);
  const behindName = indent + faces.regular.width(`${names.at(-1) ?? ''} `, type);
  // A value with no room behind its name begins the line after it.
  if (behindName + wide > width) names.push('');
  const last = names.at(-1) ?? '';
  const at = last === '' ? indent + 6 : behindName;
  const after = at + wide;
  const behind = from !== '' && after + faces.regular.width(from, small) <= width;
  const line: ColumnLine = {
    runs: [
      ...(last === '' ? [] : [{ text: last, x: indent, size: type, weight: 'regular' as const }]),
      { text: value, x: at, size: type + 0.5, weight: 'bold' },
      ...(behind ? [{ text: from, x: after, size: small, weight: 'regular' as const }] : []),
    ],
    height: type * 1.28,
  };
  const lines = [...names.slice(0, -1).map((text) => plain(text, indent, type)), line];
  return behind || from === '' ? lines : [...lines, ...fromLines(from, indent + 6, set)];
}

/** One step of how the work goes, its further lines set in under it. */
function howLines(step: string, { faces, type, width }: Set): ColumnLine[] {
  return wrapLines(step, faces.regular, type, width - 14).map((text, k) => ({
    runs: [
      ...(k === 0 ? [{ text: '–', x: 6, size: type, weight: 'regular' as const }] : []),
      { text, x: 14, size: type, weight: 'regular' },
    ],
    height: type * 1.2,
  }));
}

function fromLines(from: string, indent: number, { faces, type, width }: Set): ColumnLine[] {
  const small = Math.max(LEAST, type - 1);
  return wrapLines(from, faces.regular, small, width - indent).map((text) => plain(text, indent, small));
}
