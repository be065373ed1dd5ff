import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plan, PlanDoor } from '#core/plan/plan.ts';
import type { Mark } from './sticker-marks.ts';

/**
 * Makes the benchmark's stickers once, in a process of its own, and tells the most memory that it ever held, in kilobytes.
 * Both sides read files made before, one after another: pdfkit's the marks of a page ready laid out, ours the plan of a door. Neither
 * loads the other's library.
 */
function* numbered(folder: string) {
  for (let k = 0; existsSync(join(folder, `${k}.json`)); k += 1)
    yield JSON.parse(readFileSync(join(folder, `${k}.json`), 'utf8')) as unknown;
}

const [how, files = '', fonts = ''] = process.argv.slice(2);
if (how === 'ours') {
  const { stickersPdf } = await import('#labels/stickers-pdf.ts');
  const plan: Plan = { format: 1, id: 'bench', job: 'Bench', units: 'in', doors: [] };
  const doors = [...numbered(files)] as PlanDoor[];
  const made = await stickersPdf({ ...plan, doors }, { stock: 'letter-3x10' });
  if (!made.ok || made.stickers < 3000) throw new Error(JSON.stringify(made));
} else {
  const { byPdfKit } = await import('./by-pdfkit.ts');
  await byPdfKit(numbered(files) as Generator<readonly Mark[]>, fonts);
}
process.stdout.write(String(process.resourceUsage().maxRSS));
