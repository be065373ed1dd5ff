import { inflateSync } from 'node:zlib';
import { PDFDocument, PDFRawStream } from 'pdf-lib';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** One stroke of a page: a text on its base line, or a path with how it is painted; points, y down as pdfkit counts. */
export type PageStroke =
  | {
      readonly kind: 'text';
      readonly text: string;
      readonly x: number;
      readonly y: number;
      readonly size: number;
      readonly bold: boolean;
    }
  | {
      readonly kind: 'path';
      readonly steps: readonly Step[];
      readonly paint: 'fill' | 'stroke';
      readonly width: number;
      readonly dash: readonly number[];
    };

type Step = { readonly op: 'm' | 'l' | 'c' | 're' | 'h'; readonly at: readonly number[] };

/** Every stroke of a sticker sheet, read back from its operators, page by page: what another library is given to draw. */
export async function strokesOf(pdf: Uint8Array): Promise<PageStroke[][]> {
  const [own, read] = [
    await PDFDocument.load(pdf),
    await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise,
  ];
  const pages: PageStroke[][] = [];
  for (const [k, page] of own.getPages().entries()) {
    const contents = page.node.Contents();
    if (!(contents instanceof PDFRawStream)) throw new Error('a page has one stream of its own');
    const list = await (await read.getPage(k + 1)).getOperatorList();
    const texts = list.fnArray.flatMap((fn, n) => {
      if (fn !== OPS.showText) return [];
      const [glyphs] = list.argsArray[n] as [readonly ({ unicode: string } | number)[]];
      return [glyphs.map((glyph) => (typeof glyph === 'number' ? '' : glyph.unicode)).join('')];
    });
    pages.push(
      strokesOnPage(inflateSync(contents.getContents()).toString('latin1'), texts, page.getHeight()),
    );
  }
  await read.destroy();
  return pages;
}

interface State {
  readonly matrix: readonly [number, number, number, number];
  readonly width: number;
  readonly dash: readonly number[];
}

function strokesOnPage(stream: string, texts: string[], height: number): PageStroke[] {
  const strokes: PageStroke[] = [];
  const stack: State[] = [];
  let state: State = { matrix: [1, 1, 0, 0], width: 1, dash: [] };
  let steps: Step[] = [];
  let [size, bold, at] = [0, false, [0, 0] as readonly number[]];
  let given: number[] = [];
  const place = ([x = 0, y = 0]: readonly number[]) => {
    const [a, d, e, f] = state.matrix;
    return [e + a * x, height - (f + d * y)];
  };
  for (const token of stream.match(/\/\w+|<[0-9a-fA-F]*>|\[[^\]]*\]|[^\s[\]]+/g) ?? []) {
    if (/^-?[\d.]/.test(token)) given.push(Number(token));
    else if (token.startsWith('/')) bold = token === '/B';
    else if (token.startsWith('['))
      state = {
        ...state,
        dash: token
          .slice(1, -1)
          .split(' ')
          .filter((each) => each !== '')
          .map(Number),
      };
    else if (!token.startsWith('<')) {
      const [a = 0, , , d = 0, e = 0, f = 0] = given;
      if (token === 'q') stack.push(state);
      else if (token === 'Q') state = stack.pop() ?? state;
      else if (token === 'cm') {
        const [x, y] = [state.matrix[2] + e, state.matrix[3] + f];
        state = { ...state, matrix: [a, d, x, y] };
      } else if (token === 'Tf') size = given[0] ?? 0;
      else if (token === 'Td') at = given;
      else if (token === 'Tj') {
        const [x = 0, y = 0] = place(at);
        strokes.push({ kind: 'text', text: texts.shift() ?? '', x, y, size, bold });
      } else if (token === 'w') state = { ...state, width: given[0] ?? 1 };
      else if (token === 'm' || token === 'l') steps.push({ op: token, at: place(given) });
      else if (token === 'c')
        steps.push({ op: 'c', at: [0, 2, 4].flatMap((n) => place(given.slice(n, n + 2))) });
      else if (token === 're') {
        const [x = 0, y = 0, w = 0, h = 0] = given;
        const [left = 0, top = 0] = place([x, y + h]);
        steps.push({ op: 're', at: [left, top, w * state.matrix[0], h * state.matrix[1]] });
      } else if (token === 'h') steps.push({ op: 'h', at: [] });
      else if (token === 'f' || token === 'S') {
        strokes.push({
          kind: 'path',
          steps,
          paint: token === 'f' ? 'fill' : 'stroke',
          width: state.width,
          dash: state.dash,
        });
        steps = [];
      }
      given = [];
    }
  }
  return strokes;
}
