import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { stickersPdf } from '#labels/stickers-pdf.ts';
import { byPdfKit } from './by-pdfkit.ts';
import type { Mark } from './sticker-marks.ts';
import { plan } from './sticker-plan.ts';

/** Makes the benchmark's stickers once, in a process of its own, and tells the most memory that it ever held, in kilobytes. */
function* pages(): Generator<readonly Mark[]> {
  for (let k = 0; existsSync(join(marks, `${k}.json`)); k += 1)
    yield JSON.parse(readFileSync(join(marks, `${k}.json`), 'utf8')) as Mark[];
}

const [how, marks = '', fonts = ''] = process.argv.slice(2);
if (how === 'ours') {
  const made = await stickersPdf(plan, { stock: 'letter-3x10' });
  if (!made.ok) throw new Error(JSON.stringify(made));
} else await byPdfKit(pages(), fonts);
process.stdout.write(String(process.resourceUsage().maxRSS));
