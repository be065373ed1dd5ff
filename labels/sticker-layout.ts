import type { Faces } from './face.ts';
import type { Size, Stock } from './stock.ts';
import { type BarSymbol, dotsPerModule, type SymbolKind, symbolOf } from './symbol.ts';
import type { StickerText } from './sticker-text.ts';

/** One sticker laid out: everything at its place, in points from the sticker's lower left corner. */
export interface StickerLayout {
  readonly runs: readonly TextRun[];
  readonly symbol: {
    readonly bars: BarSymbol;
    readonly x: number;
    readonly y: number;
    readonly dots: number;
    readonly height: number | undefined;
  };
  /** Foot and height of the arrow to the door's top. */
  readonly arrow: { readonly x: number; readonly y: number; readonly height: number };
}

export interface TextRun {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly weight: 'regular' | 'bold';
}

const MARGIN = 4;
const LEAST_TYPE = 6;
const GOOD_TYPE = 7;
const LARGEST_NOTE = 9;
const LEADING = 1.12;

/** Why a sticker cannot be laid out on a stock. */
export type NoRoom = { readonly ok: false; readonly reason: 'symbol' | 'text' };

/**
 * A part's sticker on a stock: one, or as many as its notes need, each with the head and the symbol. Type is never
 * under 6 pt, nothing leaves the margin, and the symbol keeps its quiet zones.
 */
export function layOutSticker(
  text: StickerText,
  stock: Stock,
  kind: SymbolKind,
  faces: Faces,
): { readonly ok: true; readonly stickers: readonly StickerLayout[] } | NoRoom {
  const { width, height } = stock.label;
  const bars = symbolOf(kind, text.code);
  const dots = dotsPerModule(kind, stock.dpi);
  const module = (dots * 72) / stock.dpi;
  const symbolWidth = (bars.width + 2 * bars.quiet) * module;
  const symbolHeight = kind === 'code128' ? Math.max(14, Math.min(26, height * 0.2)) : bars.height * module;
  if (symbolWidth > width || symbolHeight + 2 * MARGIN > height) return { ok: false, reason: 'symbol' };
  const code = codeAt(text, faces, { width, height }, symbolWidth, symbolHeight, bars.quiet * module);
  const laid = code === null ? null : fitHeadAndNotes(text, faces, { width, height }, code.top);
  if (code === null || laid === null) return { ok: false, reason: 'text' };
  const { head, pages } = laid;
  const stickers = pages.map(({ lines, size }, k): StickerLayout => {
    const runs = lines.map((line, n): TextRun => ({
      text: line,
      x: MARGIN,
      y: head.bottom - size * (0.8 + n * LEADING),
      size,
      weight: 'regular',
    }));
    const counted =
      pages.length === 1
        ? []
        : [
            {
              text: `${k + 1}/${pages.length}`,
              x: code.countX,
              y: code.countY,
              size: 7,
              weight: 'bold' as const,
            },
          ];
    return {
      runs: [...head.runs, ...runs, code.run, ...counted],
      symbol: {
        bars,
        x: bars.quiet * module,
        y: code.symbolY,
        dots,
        height: kind === 'code128' ? symbolHeight : undefined,
      },
      arrow: head.arrow,
    };
  });
  return { ok: true, stickers };
}

interface Head {
  readonly runs: readonly TextRun[];
  readonly bottom: number;
  readonly arrow: StickerLayout['arrow'];
}

/** The largest head that leaves the notes room on one sticker in good type, else in the least type, else on several. */
function fitHeadAndNotes(
  text: StickerText,
  faces: Faces,
  size: Size,
  notesEnd: number,
): { readonly head: Head; readonly pages: readonly Page[] } | null {
  const notes = [text.job, ...text.notes];
  const largest = Math.min(18, size.height * 0.16);
  const tries = [1, 0.92, 0.84, 0.76].flatMap((share) => {
    const head = headOf(text, faces, size, largest * share);
    if (head === null) return [];
    const pages = flow(notes, faces, { width: size.width - 2 * MARGIN, height: head.bottom - notesEnd });
    return pages === null ? [] : [{ head, pages }];
  });
  const oneWith = (least: number) =>
    tries.find(({ pages }) => pages.length === 1 && (pages[0]?.size ?? 0) >= least);
  return oneWith(GOOD_TYPE) ?? oneWith(LEAST_TYPE) ?? tries.at(-1) ?? null;
}

/** Part name with the arrow, door mark and which of how many, and the size: the head of every sticker. */
function headOf(text: StickerText, faces: Faces, { width, height }: Size, largest: number): Head | null {
  const room = width - 2 * MARGIN;
  const arrowWidth = 8;
  for (let size = largest; size >= 7; size -= 0.25) {
    const small = Math.max(LEAST_TYPE, size * 0.65);
    const part = faces.bold.width(text.part, size);
    const mark = faces.bold.width(text.mark, size);
    const which = faces.regular.width(text.which, small);
    const dimensions = faces.bold.width(text.size, size * 0.9);
    if (arrowWidth + part + 6 + mark + 3 + which > room || dimensions > room) continue;
    const base = height - MARGIN - size * 0.8;
    const second = base - size * 1.1;
    return {
      arrow: { x: MARGIN + 3, y: base, height: size * 0.75 },
      bottom: second - size * 0.28,
      runs: [
        { text: text.part, x: MARGIN + arrowWidth, y: base, size, weight: 'bold' },
        { text: text.mark, x: width - MARGIN - which - 3 - mark, y: base, size, weight: 'bold' },
        { text: text.which, x: width - MARGIN - which, y: base, size: small, weight: 'regular' },
        { text: text.size, x: MARGIN, y: second, size: size * 0.9, weight: 'bold' },
      ],
    };
  }
  return null;
}

interface CodePlace {
  readonly run: TextRun;
  readonly symbolY: number;
  /** Where the notes must end. */
  readonly top: number;
  readonly countX: number;
  readonly countY: number;
}

/** The code in plain type: beside the bars where there is room, else under them. */
function codeAt(
  text: StickerText,
  faces: Faces,
  { width }: Size,
  symbolWidth: number,
  symbolHeight: number,
  quiet: number,
): CodePlace | null {
  const spaced = `${text.code.slice(0, 5)} ${text.code.slice(5)}`;
  const beside = width - MARGIN - symbolWidth;
  for (let size = 13; size >= 8; size -= 0.5) {
    const long = faces.bold.width(spaced, size);
    if (long <= beside)
      return {
        run: {
          text: spaced,
          x: symbolWidth,
          y: MARGIN + (symbolHeight - size * 0.7) / 2 - 2,
          size,
          weight: 'bold',
        },
        symbolY: MARGIN,
        top: MARGIN + symbolHeight + 2,
        countX: symbolWidth,
        countY: MARGIN + symbolHeight - 4,
      };
  }
  const size = 8;
  if (quiet + faces.bold.width(spaced, size) > width - MARGIN) return null;
  return {
    run: { text: spaced, x: Math.max(MARGIN, quiet), y: MARGIN + 1, size, weight: 'bold' },
    symbolY: MARGIN + size,
    top: MARGIN + size + symbolHeight + 1.5,
    countX: Math.max(MARGIN, quiet) + faces.bold.width(spaced, size) + 8,
    countY: MARGIN + 1,
  };
}

interface Page {
  readonly lines: readonly string[];
  readonly size: number;
}

/** The notes in the largest type that fits one sticker; else in the smallest, over as many stickers as they need. */
function flow(notes: readonly string[], faces: Faces, area: Size): Page[] | null {
  for (let size = LARGEST_NOTE; size >= LEAST_TYPE; size -= 0.25) {
    const lines = breakLines(notes, faces, area.width, size);
    if (lines !== null && lines.length * size * LEADING <= area.height) return [{ lines, size }];
  }
  const size = LEAST_TYPE + 0.5;
  const lines = breakLines(notes, faces, area.width, size);
  const fit = Math.floor(area.height / (size * LEADING));
  if (lines === null || fit < 1) return null;
  const pages: Page[] = [];
  for (let k = 0; k < lines.length; k += fit) pages.push({ lines: lines.slice(k, k + fit), size });
  return pages;
}

/** Lines of notes: broken between notes first, inside one only where it is longer than a line; never inside a fraction. */
function breakLines(notes: readonly string[], faces: Faces, width: number, size: number): string[] | null {
  const lines: string[] = [];
  let line = '';
  const fits = (text: string) => faces.regular.width(text, size) <= width;
  for (const note of notes) {
    const joined = line === '' ? note : `${line} · ${note}`;
    if (fits(joined)) {
      line = joined;
      continue;
    }
    let separator = ' · ';
    for (const word of note.match(/(?:\d+ )?\d+\/\d+,?|\S+/g) ?? []) {
      const longer = line === '' ? word : `${line}${separator}${word}`;
      separator = ' ';
      if (fits(longer)) line = longer;
      else {
        if (!fits(word)) return breakWord(lines, line, word, notes, fits);
        lines.push(line);
        line = word;
      }
    }
  }
  return line === '' ? lines : [...lines, line];
}

/** A single word longer than a line, as a job's name may be: it cannot be laid out in this size. */
function breakWord(
  lines: readonly string[],
  line: string,
  word: string,
  notes: readonly string[],
  fits: (text: string) => boolean,
): string[] | null {
  const halves = [word.slice(0, Math.ceil(word.length / 2)), word.slice(Math.ceil(word.length / 2))];
  if (!halves.every(fits) || !notes.includes(word)) return null;
  return [
    ...lines,
    ...(line === '' ? [] : [line]),
    ...halves,
    ...notes.slice(notes.indexOf(word) + 1),
  ].filter((each) => fits(each));
}
