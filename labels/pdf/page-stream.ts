import { deflateSync } from 'node:zlib';
import { type PDFDocument, PDFName, type PDFPage, PDFRawStream } from './pdf-lib.ts';
import type { Figure } from '#core/drawing/figure.ts';
import { barOperators } from './bar-path.ts';
import { type FigurePlace, figureOperators } from './drawing-pdf.ts';
import { textOperators } from './text-operators.ts';
import type { Faces } from './typeface.ts';
import { number } from './pdf-number.ts';
import type { Size } from './box.ts';
import type { BarSymbol } from './symbol.ts';

/** What is drawn on one page, gathered as one content stream. Points, from the page's lower left corner. */
export class PageStream {
  #operators: string[] = [];
  readonly #faces: Faces;

  constructor(faces: Faces) {
    this.#faces = faces;
  }

  /** A run of text on its base line. */
  text(text: string, x: number, y: number, size: number, weight: 'regular' | 'bold' = 'regular'): void {
    if (text === '') return;
    this.#operators.push(textOperators({ text, x, y, size, weight }, this.#faces));
  }

  line(x1: number, y1: number, x2: number, y2: number, width: number): void {
    this.#operators.push(`${number(width)} w ${number(x1)} ${number(y1)} m ${number(x2)} ${number(y2)} l S`);
  }

  /** A closed black shape. */
  fill(points: readonly (readonly [number, number])[]): void {
    const path = points.map(([x, y], k) => `${number(x)} ${number(y)} ${k === 0 ? 'm' : 'l'}`).join(' ');
    this.#operators.push(`${path} h f`);
  }

  /** A laid-out drawing, its lower left corner at a place. */
  figure(figure: Figure, place: FigurePlace): void {
    this.#operators.push(figureOperators(figure, this.#faces, place));
  }

  /** Whatever is drawn meanwhile, cut off at a box: a tile of something larger than the page. */
  clipped(x: number, y: number, size: Size, draw: () => void): void {
    const box = [x, y, size.width, size.height].map(number).join(' ');
    this.#operators.push(`q ${box} re W n`);
    draw();
    this.#operators.push('Q');
  }

  /** Operators drawn from a corner of their own, at a place on the page. */
  placed(x: number, y: number, operators: string): void {
    this.#operators.push(`q 1 0 0 1 ${number(x)} ${number(y)} cm`, operators, 'Q');
  }

  /** A symbol in whole printer dots, its lower left corner at the next dot from a place. */
  symbol(symbol: BarSymbol, x: number, y: number, dots: number, dpi: number, barHeight?: number): void {
    this.#operators.push(barOperators(symbol, { x, y }, dots, dpi, barHeight));
  }

  /** Puts the gathered stream on a new page. */
  finish(document: PDFDocument, size: Size): PDFPage {
    const page = document.addPage([size.width, size.height]);
    page.node.setFontDictionary(PDFName.of('R'), this.#faces.regular.font.ref);
    page.node.setFontDictionary(PDFName.of('B'), this.#faces.bold.font.ref);
    const bytes = deflateSync(Buffer.from(this.#operators.join('\n'), 'latin1'));
    const { context } = document;
    const stream = PDFRawStream.of(context.obj({ Filter: 'FlateDecode', Length: bytes.length }), bytes);
    page.node.set(PDFName.of('Contents'), document.context.register(stream));
    return page;
  }
}
