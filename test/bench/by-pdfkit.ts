import PdfKit from 'pdfkit';
import { join } from 'node:path';
import type { PageStroke } from './sticker-strokes.ts';

const LETTER: [number, number] = [612, 792];

/** The same strokes, given ready laid out, through pdfkit's own calls. */
export async function byPdfKit(pages: Iterable<readonly PageStroke[]>, fonts: string): Promise<Buffer> {
  const document = new PdfKit({ size: LETTER, margin: 0, autoFirstPage: false });
  document.registerFont('R', join(fonts, 'AtkinsonHyperlegible-Regular.ttf'));
  document.registerFont('B', join(fonts, 'AtkinsonHyperlegible-Bold.ttf'));
  const chunks: Buffer[] = [];
  const done = new Promise<Buffer>((resolve) => {
    document.on('data', (chunk: Buffer) => chunks.push(chunk));
    document.on('end', () => resolve(Buffer.concat(chunks)));
  });
  for (const page of pages) {
    document.addPage();
    for (const stroke of page) {
      if (stroke.kind === 'text') {
        document
          .font(stroke.bold ? 'B' : 'R')
          .fontSize(stroke.size)
          .text(stroke.text, stroke.x, stroke.y, { lineBreak: false, baseline: 'alphabetic' });
        continue;
      }
      for (const { op, at } of stroke.steps) {
        const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = at;
        if (op === 'm') document.moveTo(a, b);
        else if (op === 'l') document.lineTo(a, b);
        else if (op === 'c') document.bezierCurveTo(a, b, c, d, e, f);
        else if (op === 're') document.rect(a, b, c, d);
        else document.closePath();
      }
      if (stroke.paint === 'fill') document.fill();
      else {
        document.lineWidth(stroke.width);
        if (stroke.dash.length > 0) document.dash(stroke.dash[0] ?? 1, { space: stroke.dash[1] ?? 1 });
        else document.undash();
        document.stroke();
      }
    }
  }
  document.end();
  return done;
}
