import { looseStage } from '../../loose-plan.ts';
import fontkit from '@pdf-lib/fontkit';
import Fraction from 'fraction.js';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plan, PlanDoor, PlanPart } from '#core/plan/plan.ts';
import { settableDoor } from '#core/settable/settable-door.ts';
import { paperStep } from '#core/settable/step.ts';
import { partName } from '#core/telling/names.ts';
import type { Stocks } from '#core/stickers/stock.ts';
import { perPage, placeOn, type Stock, stockNamed } from '#labels/stickers/stock-in-points.ts';
import { type Box, drawingsOf, symbolsOf } from '../read-operators.ts';
import { type PdfText, textsOf } from '../read-pdf.ts';

const fonts = ['Regular', 'Bold'].map((name) =>
  fontkit.create(
    readFileSync(join(import.meta.dirname, `../../../labels/fonts/AtkinsonHyperlegible-${name}.ttf`)),
  ),
);

/** The ink of a run: its height by the glyphs' own outlines, its width by the PDF. */
function inkOf({ text, x, y, size, width }: PdfText): Box {
  const boxes = fonts.flatMap((font) =>
    font.layout(text.trim()).glyphs.map(({ bbox }) => ({
      low: bbox.minY / font.unitsPerEm,
      high: bbox.maxY / font.unitsPerEm,
    })),
  );
  return {
    left: x,
    right: x + width,
    bottom: y + Math.min(...boxes.map(({ low }) => low)) * size,
    top: y + Math.max(...boxes.map(({ high }) => high)) * size,
  };
}

/** One sticker as it is found in a PDF, its boxes from its own lower left corner. */
export interface FoundSticker {
  readonly page: number;
  readonly x: number;
  readonly y: number;
  readonly texts: readonly PdfText[];
  readonly symbol: Box | undefined;
  readonly drawing: Box | undefined;
}

export function stockOf(name: string, stocks?: Stocks): Stock {
  const stock = stockNamed(name, stocks);
  if (stock === null) throw new Error(`there is a stock ${name}`);
  return stock;
}

/** Every sticker of a PDF, in order, with what stands on it. */
export async function stickersOf(pdf: Uint8Array, stock: Stock, count: number): Promise<FoundSticker[]> {
  const [texts, symbols, drawings] = [await textsOf(pdf), await symbolsOf(pdf), await drawingsOf(pdf)];
  const { width, height } = stock.label;
  const places = new Map<string, { texts: PdfText[]; symbol?: Box; drawing?: Box }>();
  const found: (FoundSticker & { key: string })[] = [];
  for (let k = 0; k < count; k += 1) {
    const { x, y } = placeOn(stock, k % perPage(stock));
    const page = Math.floor(k / perPage(stock)) + 1;
    const key = `${page} ${k % perPage(stock)}`;
    places.set(key, { texts: [] });
    found.push({ key, page, x, y, texts: [], symbol: undefined, drawing: undefined });
  }
  const keyAt = (page: number, x: number, y: number): string => {
    for (let k = 0; k < perPage(stock); k += 1) {
      const at = placeOn(stock, k);
      if (x >= at.x && x < at.x + width && y >= at.y && y < at.y + height) return `${page} ${k}`;
    }
    throw new Error(`something stands on no sticker: page ${page}, ${x}, ${y}`);
  };
  const on = (key: string) => {
    const place = places.get(key);
    if (place === undefined) throw new Error(`a sticker more than there should be: ${key}`);
    return place;
  };
  for (const each of texts) on(keyAt(each.page, each.x, each.y)).texts.push(each);
  for (const each of symbols) on(keyAt(each.page, each.left, each.bottom)).symbol = each;
  for (const each of drawings) on(keyAt(each.page, each.left, each.bottom)).drawing = each;
  return found.map(({ key, page, x, y }) => {
    const { texts: own, symbol, drawing } = on(key);
    return { page, x, y, texts: own, symbol, drawing };
  });
}

/** Hair's breadth in points that measuring may be off. */
const HAIR = 0.08;

/** Everything wrong with the boxes of a sticker: outside its margin, over another, or in type under 6 pt. */
export function boxTroubles(sticker: FoundSticker, stock: Stock): string[] {
  const { x, y, texts, symbol, drawing } = sticker;
  const { width, height } = stock.label;
  const boxes = [
    ...texts.map((each) => ({ what: each.text, box: inkOf(each) })),
    ...(symbol === undefined ? [] : [{ what: 'symbol', box: symbol }]),
    ...(drawing === undefined ? [] : [{ what: 'drawing', box: drawing }]),
  ];
  const troubles = texts
    .filter(({ size }) => size < 6 - 0.001)
    .map(({ text, size }) => `${text} in ${size} pt`);
  if (symbol === undefined) troubles.push('no symbol');
  for (const { what, box } of boxes)
    if (
      box.left < x + stock.margin - HAIR ||
      box.right > x + width - stock.margin + HAIR ||
      box.bottom < y + stock.margin - HAIR ||
      box.top > y + height - stock.margin + HAIR
    )
      troubles.push(
        `${what} outside the margin: ${box.left - x}, ${box.bottom - y} to ${box.right - x}, ${box.top - y}`,
      );
  for (const [k, a] of boxes.entries())
    for (const b of boxes.slice(k + 1))
      if (
        a.box.left < b.box.right - HAIR &&
        b.box.left < a.box.right - HAIR &&
        a.box.bottom < b.box.top - HAIR &&
        b.box.bottom < a.box.top - HAIR
      )
        troubles.push(`${a.what} over ${b.what}`);
  return troubles;
}

/** The text of a sticker as it reads: a space where a line ends, and between a whole number and the smaller figures of its fraction. */
export function readingOf(texts: readonly PdfText[]): string {
  let out = '';
  let end = Infinity;
  for (const [k, { text, x, width }] of texts.entries()) {
    const fraction =
      /^\d+\//.test(text) || (/^\d+$/.test(text) && texts[k + 1]?.text.startsWith('/') === true);
    if ((x < end - 0.5 && out !== '') || (fraction && /\d$/.test(out))) out += ' ';
    out += text;
    end = x + width;
  }
  return out.replace(/\s+/g, ' ');
}

/** Without the spaces and dots between words, but with those that part a whole number from its fraction. */
function tight(text: string): string {
  return text.replace(/·/g, ' ').replace(/(?<!\d)\s+|\s+(?!\d)/g, '');
}

/** A printed value to the nearest 1/64 in, or to 0.1 mm as a decimal; "≈" before it where that is not the value itself. */
export function onTape(value: string, units: Plan['units']): string {
  const exact = new Fraction(value);
  const near = units === 'in' ? exact.mul(64).round().div(64) : exact.mul(10).round().div(10);
  return `${near.equals(exact) ? '' : '≈ '}${units === 'in' ? near.toFraction(true) : near.toString()}`;
}

/** The plan's figures that a part's sticker must carry, in its order: sizes, then what is milled into it. A rail's mitres have their shoulder line where the tenon begins, so its length tells that. */
export function figuresOf(part: PlanPart): string[] {
  const stage = (...names: string[]) =>
    names.map((name) => looseStage(part, name)).find((found) => found !== undefined);
  const of = (name: string, ...fields: string[]) =>
    fields.flatMap((field) => {
      const value = stage(name)?.settings[field];
      return value === undefined ? [] : [String(value)];
    });
  const tenon = stage('tenon') === undefined ? [] : [...of('tenon', 'width'), ...of('shoulder', 'stop')];
  const mortise = stage('mortise');
  return [
    part.length,
    part.width,
    part.thickness,
    ...of('bead', 'bead'),
    ...of('groove', 'width', 'depth'),
    ...of('slot', 'width', 'depth'),
    ...of('mortise', 'depthFromEdge'),
    ...(mortise?.places ?? []).flatMap(({ settings }) => [String(settings.start), String(settings.stop)]),
    ...tenon,
    ...of('haunch', 'length', 'height'),
    ...of('mitre', 'sightEdge'),
    ...of('arch', 'radius', 'rise'),
    ...of('cutout', 'sideHeight', 'radius'),
    ...of('raise', 'tongue', 'band'),
  ];
}

/** What is wrong with the text of a part's stickers, read one after another: each head, and all figures in order, as settable to 1/64 in or 0.1 mm. */
export function textTroubles(
  plan: Plan,
  door: PlanDoor,
  exact: PlanPart,
  texts: readonly string[],
): string[] {
  const shown = settableDoor(door, paperStep(plan.units)).parts;
  const part = shown.find((each) => each.part === exact.part) ?? exact;
  const count = plan.doors.filter(({ mark }) => mark === door.mark).length;
  const k = door.door.slice(door.mark.length + 1);
  const spaced = `${part.code.slice(0, 5)} ${part.code.slice(5)}`;
  const size = [part.length, part.width, part.thickness].map((each) => onTape(each, plan.units)).join(' × ');
  const troubles: string[] = [];
  const notes: string[] = [];
  for (const [n, text] of texts.entries()) {
    const counted = texts.length > 1 ? [`sticker ${n + 1} of ${texts.length}`] : [];
    const foot = joined(`${k} of ${count}`, spaced, ...counted);
    // Of a long mark the first lines are set before the size, and the last with the door's number after all notes.
    const found = Array.from({ length: door.mark.length + 1 }, (_, cut) => {
      const [begin, end] = [door.door.slice(0, cut), door.door.slice(cut)];
      const head = [escaped(tight(partName(part.part))), broken(begin), escaped(tight(size))].join(' ?');
      return new RegExp(`^${head} ?(.*?) ?${broken(end)} ?${foot}$`).exec(tight(text));
    }).find((each) => each !== null);
    if (found === undefined) troubles.push(`${door.door}, ${size} … ${foot} expected: ${text}`);
    notes.push(found?.[1] ?? '');
  }
  let rest = tight(notes.join(' '));
  // A long name may be broken over lines, so it is compared without its spaces.
  const named = new RegExp(`^${broken(plan.job)}`).exec(rest)?.[0];
  if (named === undefined) troubles.push(`the job's name expected: ${rest}`);
  rest = rest.slice(named?.length ?? 0);
  for (const value of figuresOf(part).slice(3)) {
    const figure = onTape(value, plan.units);
    const found = new RegExp(`(?<!\\d|/|\\d )${escaped(tight(figure))}(?!\\d|/| \\d+/)`).exec(rest);
    if (found === null) troubles.push(`${figure} expected in ${rest}`);
    else rest = rest.slice(found.index + found[0].length);
  }
  return troubles;
}

/** A text that may be broken over lines anywhere. */
function broken(text: string): string {
  return [...tight(text).replace(/ /g, '')].map(escaped).join(' ?');
}

/** Texts that stand after one another, each tight, a space between them or not. */
function joined(...texts: readonly string[]): string {
  return texts.map((text) => escaped(tight(text))).join(' ?');
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}
