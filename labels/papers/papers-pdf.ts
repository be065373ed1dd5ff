import type { PaperKind, PaperSize } from '#core/api/prints-api.ts';
import type { Plan } from '#core/plan/plan.ts';
import { say } from '#core/words/say.ts';
import { type Faces, newDocument } from '../pdf/typeface.ts';
import type { Size } from '../pdf/box.ts';
import { jobSheet } from './job-sheet.ts';
import { setupCards } from './setup-card.ts';
import { fullSizeSheets } from './tile-sheets.ts';
import type { PaperWork } from './paper-work.ts';
import { PAPERS } from './paper-size.ts';
import { panelTemplates } from './panel-template.ts';
import { railRods } from './rail-rod.ts';
import { railTemplates } from './rail-template.ts';
import { stileRods } from './stile-rod.ts';

export interface PaperOptions {
  readonly kind: PaperKind;
  readonly paper: PaperSize;
  /** Only these doors, by name ("BENCH-1") or by mark (all of it). */
  readonly doors?: readonly string[];
  /** Told after every piece of the work, laying out as well as pages; it may throw to stop. */
  readonly progress?: (done: number, of: number) => void | Promise<void>;
}

export type Papers =
  | { readonly ok: true; readonly pdf: Uint8Array; readonly pages: number }
  | { readonly ok: false; readonly fault: 'doors-unknown'; readonly doors: readonly string[] }
  | { readonly ok: false; readonly fault: 'no-arch' };

/** One kind of a job's papers as a PDF in true size. The same plan gives byte for byte the same PDF. */
export async function papersPdf(plan: Plan, options: PaperOptions): Promise<Papers> {
  const { kind, paper, doors: asked, progress } = options;
  const unknown = (asked ?? []).filter(
    (name) => !plan.doors.some(({ door, mark }) => door === name || mark === name),
  );
  if (unknown.length > 0) return { ok: false, fault: 'doors-unknown', doors: unknown };
  const chosen: Plan = {
    ...plan,
    doors: plan.doors.filter(
      ({ door, mark }) => asked === undefined || asked.includes(door) || asked.includes(mark),
    ),
  };
  const { document, faces } = await newDocument(say(`paper.title-${kind}`, { job: plan.job }));
  let pages = 0;
  for (const piece of workOf(plan, chosen, kind, PAPERS[paper], faces)) {
    for (const page of piece.pages) page.stream.finish(document, page.size);
    pages += piece.pages.length;
    await progress?.(piece.done, piece.of);
  }
  if (pages === 0) return { ok: false, fault: 'no-arch' };
  return { ok: true, pdf: await document.save({ useObjectStreams: true }), pages };
}

function workOf(whole: Plan, plan: Plan, kind: PaperKind, size: Size, faces: Faces): PaperWork {
  switch (kind) {
    case 'templates':
      return fullSizeSheets([...railTemplates(plan), ...panelTemplates(plan)], size, plan.job, faces);
    case 'rods':
      return fullSizeSheets([...stileRods(plan), ...railRods(plan)], size, plan.job, faces);
    case 'cards':
      return setupCards(whole, plan.doors, size, faces);
    case 'sheet':
      return jobSheet(plan, size, faces);
  }
}
