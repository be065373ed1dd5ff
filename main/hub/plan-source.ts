import type { PlanSource } from '../work/plan-source.ts';
import type { Tools } from '../work/tasks.ts';
import type { Store } from '../store/store.ts';
import type { StoredJob } from '../store/documents/stored-job.ts';

/** What a job's plan as it lives now is made from. */
export function planSource(store: Store, stored: StoredJob): PlanSource {
  const { document, faults, anyway, lines } = stored;
  return {
    document: JSON.stringify(document),
    last: faults.length === 0 || anyway ? null : lines,
    replaced: store.replaced(document.id),
  };
}

/** The shop's tools, for what is made on its stocks. */
export function toolsOf({ shop }: Store): Tools {
  const { units, profile } = shop.shop;
  return { units, profile };
}
