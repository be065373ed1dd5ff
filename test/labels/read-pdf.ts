import { type Canvas, createCanvas, DOMMatrix, ImageData, Path2D } from '@napi-rs/canvas';

// The PDF reader draws with the page's own canvas classes, which plain Node has not.
Object.assign(globalThis, { DOMMatrix, ImageData, Path2D });
const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');

/** One run of text as it stands in a PDF: its place, its size and its width, in points from the page's lower left corner. */
export interface PdfText {
  readonly page: number;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly width: number;
}

/** Every run of text of a PDF, in the order in which it is drawn. A no-break space, drawn as every other, is read as a plain one. */
export async function textsOf(pdf: Uint8Array): Promise<PdfText[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const found: PdfText[] = [];
  for (let page = 1; page <= document.numPages; page += 1) {
    const content = await (await document.getPage(page)).getTextContent({ disableNormalization: true });
    for (const item of content.items)
      if ('str' in item && item.str.trim() !== '') {
        const [, , c = 0, d = 0, x = 0, y = 0] = item.transform as number[];
        found.push({
          page,
          text: item.str.replace(/\u00a0/g, ' '),
          x,
          y,
          size: Math.hypot(c, d),
          width: item.width,
        });
      }
  }
  await document.destroy();
  return found;
}

/** A page of grey values, row by row from the top. */
export interface GreyPage {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** Every page of a PDF drawn at a resolution, given one at a time. */
async function* drawnPages(pdf: Uint8Array, dpi: number): AsyncGenerator<Canvas> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  for (let k = 1; k <= document.numPages; k += 1) {
    const page = await document.getPage(k);
    const viewport = page.getViewport({ scale: dpi / 72 });
    const canvas = createCanvas(Math.round(viewport.width), Math.round(viewport.height));
    const context = canvas.getContext('2d');
    context.fillStyle = '#fff';
    context.fillRect(0, 0, canvas.width, canvas.height);
    await page.render({ canvasContext: context as unknown as CanvasRenderingContext2D, viewport }).promise;
    yield canvas;
    page.cleanup();
  }
  await document.destroy();
}

/** Every page of a PDF as a printer of a resolution would make it, given one at a time. */
export async function* greyPages(pdf: Uint8Array, dpi: number): AsyncGenerator<GreyPage> {
  for await (const canvas of drawnPages(pdf, dpi)) {
    const { data, width, height } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
    const grey = new Uint8Array(width * height);
    for (let n = 0; n < grey.length; n += 1) grey[n] = data[n * 4] ?? 0;
    yield { width, height, grey };
  }
}

/** The pages of a PDF as PNGs at a resolution. */
export async function pngPages(pdf: Uint8Array, dpi: number): Promise<Buffer[]> {
  const pages: Buffer[] = [];
  for await (const canvas of drawnPages(pdf, dpi)) pages.push(canvas.toBuffer('image/png'));
  return pages;
}
