import { PDFArray, PDFDocument, PDFRawStream } from 'pdf-lib';
import { inflateSync } from 'node:zlib';

/** A box in points, from the page's lower left corner. */
export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** A symbol as it is drawn: its box without white edges, and each bar's left and right. */
export interface DrawnSymbol extends Box {
  readonly page: number;
  readonly bars: readonly (readonly [number, number])[];
}

/** The text of every page's stream of operators. */
async function streamsOf(pdf: Uint8Array): Promise<string[]> {
  const document = await PDFDocument.load(pdf);
  return document.getPages().map((page) => {
    const contents = page.node.Contents();
    if (!(contents instanceof PDFRawStream) || contents instanceof PDFArray)
      throw new Error('a page has one stream of its own');
    return inflateSync(contents.getContents()).toString('latin1');
  });
}

/** Every barcode of a PDF, read from its operators: a matrix, rectangles, one fill. */
export async function symbolsOf(pdf: Uint8Array): Promise<DrawnSymbol[]> {
  return (await streamsOf(pdf)).flatMap((stream, k) =>
    [...stream.matchAll(/^q (\S+) 0 0 (\S+) (\S+) (\S+) cm ((?:\S+ \S+ \S+ \S+ re )+)f Q$/gm)].map(
      (match) => {
        const [a = 0, d = 0, e = 0, f = 0] = match.slice(1, 5).map(Number);
        const bars = [...(match[5] ?? '').matchAll(/(\S+) (\S+) (\S+) (\S+) re/g)].map((each) =>
          each.slice(1, 5).map(Number),
        );
        const box = bars.map(([x = 0, y = 0, w = 0, h = 0]) => ({
          left: e + a * x,
          right: e + a * (x + w),
          bottom: f + d * y,
          top: f + d * (y + h),
        }));
        return {
          page: k + 1,
          left: Math.min(...box.map(({ left }) => left)),
          right: Math.max(...box.map(({ right }) => right)),
          bottom: Math.min(...box.map(({ bottom }) => bottom)),
          top: Math.max(...box.map(({ top }) => top)),
          bars: box.map(({ left, right }) => [left, right] as const),
        };
      },
    ),
  );
}

/** The box of every drawing of a PDF: what the figure's lines reach. */
export async function drawingsOf(pdf: Uint8Array): Promise<(Box & { readonly page: number })[]> {
  return (await streamsOf(pdf)).flatMap((stream, k) =>
    [...stream.matchAll(/^q 1 0 0 1 (\S+) (\S+) cm$([\s\S]*?)^Q$\n(?=BT)/gm)].flatMap((match) => {
      const [x, y] = [Number(match[1]), Number(match[2])];
      const figure = /^q 1 J 1 j$([\s\S]*)/m.exec(match[3] ?? '')?.[1];
      if (figure === undefined) return [];
      const points = [...figure.replace(/^q [\s\S]*? Q$/gm, '').matchAll(/(-?[\d.]+) (-?[\d.]+) [mlc]\b/g)];
      const xs = points.map((each) => x + Number(each[1]));
      const ys = points.map((each) => y + Number(each[2]));
      return [
        {
          page: k + 1,
          left: Math.min(...xs),
          right: Math.max(...xs),
          bottom: Math.min(...ys),
          top: Math.max(...ys),
        },
      ];
    }),
  );
}
