import { type PDFDocument, PDFName, type PDFPage } from 'pdf-lib';
import type { Figure } from '#core/drawing/model.ts';
import { type FigurePlace, figureOperators } from './drawing-pdf.ts';
import type { Faces } from './face.ts';
import { number } from './pdf-number.ts';
import type { Size } from './stock.ts';
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
    const name = weight === 'bold' ? 'B' : 'R';
    this.#operators.push(
      `BT /${name} ${number(size)} Tf ${number(x)} ${number(y)} Td ${this.#faces[weight].encode(text)} Tj ET`,
    );
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

  /**
   * A symbol in whole printer dots, its lower left corner moved to the nearest dot. Each bar is drawn 0.02 dot smaller
   * all round, so that no printer's rounding makes it a dot wider; one path and one fill for all.
   */
  symbol(symbol: BarSymbol, x: number, y: number, dots: number, dpi: number, barHeight?: number): void {
    const dot = 72 / dpi;
    const inset = 0.02 * dot;
    const left = Math.round(x / dot) * dot;
    const bottom = Math.round(y / dot) * dot;
    const module = dots * dot;
    const high = barHeight === undefined ? module : Math.floor(barHeight / dot) * dot;
    const rectangles = symbol.bars.map((bar) => {
      const values = [
        left + bar.x * module + inset,
        bottom + bar.y * high + inset,
        bar.width * module - 2 * inset,
        bar.height * high - 2 * inset,
      ];
      return `${values.map((value) => value.toFixed(4)).join(' ')} re`;
    });
    this.#operators.push(`${rectangles.join(' ')} f`);
  }

  /** Puts the gathered stream on a new page. */
  finish(document: PDFDocument, size: Size): PDFPage {
    const page = document.addPage([size.width, size.height]);
    page.node.setFontDictionary(PDFName.of('R'), this.#faces.regular.font.ref);
    page.node.setFontDictionary(PDFName.of('B'), this.#faces.bold.font.ref);
    const stream = document.context.flateStream(this.#operators.join('\n'));
    page.node.set(PDFName.of('Contents'), document.context.register(stream));
    return page;
  }
}
