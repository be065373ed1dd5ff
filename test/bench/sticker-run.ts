import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plan, PlanDoor } from '#core/plan/plan.ts';
import type { PageStroke } from './sticker-strokes.ts';

/**
 * Makes the benchmark's stickers once, in a process of its own, and tells the most memory that it ever held, in kilobytes.
 * Both sides hold the plan, as whoever makes its stickers does; pdfkit is handed the strokes ready laid out besides, a page
 * at a time. Neither loads the other's library.
 */
function* numbered(folder: string) {
  for (let k = 0; existsSync(join(folder, `${k}.json`)); k += 1)
    yield JSON.parse(readFileSync(join(folder, `${k}.json`), 'utf8')) as unknown;
}

const [how, filed = '', strokes = '', fonts = ''] = process.argv.slice(2);
const doors = [...numbered(filed)] as PlanDoor[];
const plan: Plan = { format: 1, id: 'bench', job: 'Bench', units: 'in', doors };
if (how === 'ours') {
  const { stickersPdf } = await import('#labels/stickers/stickers-pdf.ts');
  const made = await stickersPdf(plan, { stock: 'letter-3x10' });
  if (!made.ok || made.stickers < 3000) throw new Error(JSON.stringify(made));
} else {
  const { byPdfKit } = await import('./by-pdfkit.ts');
  await byPdfKit(numbered(strokes) as Generator<readonly PageStroke[]>, fonts);
}
if (plan.doors.length === 0) throw new Error('the plan was not held to the end');
process.stdout.write(String(process.resourceUsage().maxRSS));
