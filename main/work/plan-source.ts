import { livePlan } from '#core/marks/live-plan.ts';
import type { JobProgress, PartProgress } from '#core/marks/mark.ts';
import type { Plan } from '#core/plan/plan.ts';
import type { Language } from '#core/words/languages.ts';
import { jobDocument } from '../store/documents/job-document.ts';
import { unpackedPlan } from '../store/documents/kept-plan.ts';
import { planAnyway, planDocument } from '../store/documents/plan-document.ts';

/** What a job's plan as it lives is made from, small enough to be handed to another thread. */
export interface PlanSource {
  /** The text of its document. */
  readonly document: string;
  /** Of a job that this version makes no plan of: the packed lines of the last one that was made. */
  readonly last: Uint8Array | null;
  /** The code that took the place of each spoiled blank's. */
  readonly replaced: Readonly<Record<string, string>>;
}

/** The last plan that was made here without reasons: papers and answers of one job often follow each other. */
let lastMade: { readonly document: string; readonly plan: Plan } | null = null;

/** A job's plan as it lives; with the reasons of every setting in a language, or of the doors of some marks alone, if asked for. */
export function planFrom(
  source: PlanSource,
  why: Language | null = null,
  marks: readonly string[] | null = null,
): Plan {
  return livePlan(planned(source, why, marks), replacedOnly(source.replaced));
}

function planned(
  { document, last }: PlanSource,
  why: Language | null,
  marks: readonly string[] | null,
): Plan {
  if (why === null && lastMade?.document === document) return lastMade.plan;
  const read = jobDocument.parse(JSON.parse(document));
  const made = last === null ? planDocument(read, why, marks) : null;
  const kept = last === null ? null : unpackedPlan(read.id, last);
  const plan = made?.ok === true ? made.value : (kept ?? planAnyway(read));
  if (last !== null || (why === null && marks === null)) lastMade = { document, plan };
  return plan;
}

/** Of a job's progress no more than which code stands for a part now. */
function replacedOnly(replaced: PlanSource['replaced']): JobProgress {
  const parts = Object.entries(replaced).map(([code, replacedBy]): [string, PartProgress] => [
    code,
    { code, door: '', part: '', number: 0, done: {}, proved: {}, replacedBy },
  ]);
  return { job: '', seq: 0, parts: Object.fromEntries(parts), doors: {} };
}
