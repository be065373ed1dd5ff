import { createHash } from 'node:crypto';
import type { Store } from '../store/store.ts';

/** Tags of what people write: a screen that knows one need not ask for what it stands for. */
export function keptTags({ jobs, shop }: Pick<Store, 'jobs' | 'shop'>): {
  readonly jobs: string;
  readonly shop: string;
} {
  return { jobs: jobsTag({ jobs }), shop: tagOf(JSON.stringify(shop.document)) };
}

/** The tag of the list of jobs: another one whenever a job is added, changed or taken away. */
export function jobsTag({ jobs }: Pick<Store, 'jobs'>): string {
  return tagOf(
    jobs
      .all()
      .map(({ document, summary }) => `${summary.id} ${summary.hash} ${document.revision}`)
      .join('\n'),
  );
}

function tagOf(text: string): string {
  return createHash('sha256').update(text).digest('base64url').slice(0, 16);
}
