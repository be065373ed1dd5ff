import type { PDFDocument } from '../pdf/pdf-lib.ts';
import { PageStream } from '../pdf/page-stream.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { LaidSticker } from './lay-sticker.ts';
import { perPage, placeOn, type Stock } from './stock-in-points.ts';

/** Stickers one after another on the pages of a document, from a free position (from 0) of the first. */
export class StickerSheets {
  readonly #document: PDFDocument;
  readonly #faces: Faces;
  readonly #stock: Stock;
  #page: PageStream;
  #position: number;
  #pages = 0;
  #stickers = 0;

  constructor(document: PDFDocument, faces: Faces, stock: Stock, start: number) {
    this.#document = document;
    this.#faces = faces;
    this.#stock = stock;
    this.#page = new PageStream(faces);
    this.#position = start;
  }

  put(sticker: LaidSticker): void {
    if (this.#position >= perPage(this.#stock)) this.#finish();
    sticker(this.#page, placeOn(this.#stock, this.#position));
    this.#position += 1;
    this.#stickers += 1;
  }

  /** The last page finished, an empty one where there is none; how many of both there are. */
  close(): { readonly stickers: number; readonly pages: number } {
    if (this.#position > 0 || this.#pages === 0) this.#finish();
    return { stickers: this.#stickers, pages: this.#pages };
  }

  #finish(): void {
    this.#page.finish(this.#document, this.#stock.page);
    this.#pages += 1;
    this.#page = new PageStream(this.#faces);
    this.#position = 0;
  }
}
