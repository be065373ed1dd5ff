import fontkit from '@pdf-lib/fontkit/dist/fontkit.umd.min.js';
import { PDFDocument, type PDFFont } from './pdf-lib.ts';
import bold from '../fonts/AtkinsonHyperlegible-Bold.ttf?inline';
import regular from '../fonts/AtkinsonHyperlegible-Regular.ttf?inline';

/** One weight of the embedded face, with what laying out needs: real widths, and the glyphs for the page's stream. */
export interface Face {
  readonly font: PDFFont;
  /** Width of a text at a size, in points. */
  width(text: string, size: number): number;
  /** The text as the operand of a Tj operator. Never operators: glyph numbers in hex. */
  encode(text: string): string;
}

export interface Faces {
  readonly regular: Face;
  readonly bold: Face;
}

/** A new document that comes out the same every time, with both weights embedded as subsets. */
export async function newDocument(title: string): Promise<{ document: PDFDocument; faces: Faces }> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.registerFontkit(fontkit);
  document.setTitle(title);
  const embed = async (url: string) =>
    face(await document.embedFont(Buffer.from(url.slice(url.indexOf(',') + 1), 'base64'), { subset: true }));
  return { document, faces: { regular: await embed(regular), bold: await embed(bold) } };
}

function face(font: PDFFont): Face {
  const widths = new Map<string, number>();
  const glyphs = new Map<string, string>();
  const widthOf = (character: string) => {
    const known = widths.get(character);
    if (known !== undefined) return known;
    const width = font.widthOfTextAtSize(character, 1000) / 1000;
    widths.set(character, width);
    return width;
  };
  return {
    font,
    width: (text, size) => [...text].reduce((sum, each) => sum + widthOf(each), 0) * size,
    encode: (text) => {
      let hex = '';
      for (const character of text) {
        let glyph = glyphs.get(character);
        if (glyph === undefined) {
          glyph = font.encodeText(character).toString().slice(1, -1);
          glyphs.set(character, glyph);
        }
        hex += glyph;
      }
      return `<${hex}>`;
    },
  };
}
