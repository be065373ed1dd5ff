import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface At {
  readonly x: number;
  readonly y: number;
}

/** One stretch of a drawn path, in points from the page's lower left corner. */
export type Stretch =
  | { readonly kind: 'line'; readonly from: At; readonly to: At }
  | { readonly kind: 'curve'; readonly from: At; readonly c1: At; readonly c2: At; readonly to: At };

export interface ReadText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly size: number;
}

/** A page as a PDF reader sees it: its size, its paths, its texts. */
export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly paths: readonly (readonly Stretch[])[];
  readonly texts: readonly ReadText[];
}

/** Reads every page of a PDF by its operator list. */
export async function readPages(pdf: Uint8Array): Promise<ReadPage[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const pages: ReadPage[] = [];
  for (let k = 1; k <= document.numPages; k += 1) {
    const page = await document.getPage(k);
    const { fnArray, argsArray } = await page.getOperatorList();
    const paths = pathsOf(fnArray, argsArray);
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [
            {
              text: item.str,
              x: Number(item.transform[4]),
              y: Number(item.transform[5]),
              width: item.width,
              size: Math.hypot(Number(item.transform[0]), Number(item.transform[1])),
            },
          ]
        : [],
    );
    const { width, height } = page.getViewport({ scale: 1 });
    pages.push({ width, height, paths, texts });
  }
  return pages;
}

/** What `cm` sets: x' = ax + cy + e, y' = bx + dy + f. */
type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

function times([a, b, c, d, e, f]: Matrix, [A, B, C, D, E, F]: Matrix): Matrix {
  return [a * A + c * B, b * A + d * B, a * C + c * D, b * C + d * D, a * E + c * F + e, b * E + d * F + f];
}

/** Every path where it stands on the page, whatever the page was moved and scaled by when it was drawn. */
function pathsOf(operators: readonly number[], values: readonly unknown[]): Stretch[][] {
  const paths: Stretch[][] = [];
  const kept: Matrix[] = [];
  let now: Matrix = [1, 0, 0, 1, 0, 0];
  operators.forEach((operator, n) => {
    if (operator === OPS.save) kept.push(now);
    else if (operator === OPS.restore) now = kept.pop() ?? now;
    else if (operator === OPS.transform) now = times(now, values[n] as Matrix);
    else if (operator === OPS.constructPath) paths.push(pathOf(values[n] as [number[], number[]], now));
  });
  return paths;
}

function pathOf([operators, numbers]: [number[], number[]], [a, b, c, d, e, f]: Matrix): Stretch[] {
  const found: Stretch[] = [];
  let at = 0;
  const point = (): At => {
    const [x = NaN, y = NaN] = numbers.slice(at, at + 2);
    at += 2;
    return { x: a * x + c * y + e, y: b * x + d * y + f };
  };
  let [start, from] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ];
  for (const operator of operators) {
    if (operator === OPS.moveTo) start = from = point();
    else if (operator === OPS.lineTo) {
      const to = point();
      found.push({ kind: 'line', from, to });
      from = to;
    } else if (operator === OPS.curveTo) {
      const [c1, c2, to] = [point(), point(), point()];
      found.push({ kind: 'curve', from, c1, c2, to });
      from = to;
    } else if (operator === OPS.closePath) {
      found.push({ kind: 'line', from, to: start });
      from = start;
    } else if (operator === OPS.rectangle) {
      point();
      point();
    } else throw new Error(`an operator that papers do not use: ${operator}`);
  }
  return found;
}

/** Points along a curve, ends included. */
export function along(curve: Extract<Stretch, { kind: 'curve' }>, pieces: number): At[] {
  const { from, c1, c2, to } = curve;
  return Array.from({ length: pieces + 1 }, (_, k) => {
    const t = k / pieces;
    const [a, b, c, d] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
    return {
      x: a * from.x + b * c1.x + c * c2.x + d * to.x,
      y: a * from.y + b * c1.y + c * c2.y + d * to.y,
    };
  });
}

export const apart = (a: At, b: At): number => Math.hypot(a.x - b.x, a.y - b.y);

/** A tenth of a millimetre, in points. */
export const TENTH = (0.1 * 72) / 25.4;

/** A printed length as a number: "14 3/4", "3/4", "19", "9.655". */
export function numberOf(text: string | number | undefined): number {
  const parts = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(String(text));
  return parts === null ? Number(text) : Number(parts[1] ?? 0) + Number(parts[2]) / Number(parts[3]);
}
