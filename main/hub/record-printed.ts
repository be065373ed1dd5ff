import type { Store } from '../store/store.ts';

/** Writes down which of a job's stickers left a printer: those that had left one before as a reprint of their own. */
export async function recordPrinted(
  store: Store,
  {
    codes,
    ...run
  }: {
    readonly job: string;
    readonly codes: readonly string[];
    readonly stock: string;
    readonly printer?: string;
    readonly by?: string;
  },
): Promise<void> {
  const before = store.printed(run.job);
  const known = (code: string) => Object.hasOwn(before, code);
  for (const some of [codes.filter((code) => !known(code)), codes.filter(known)])
    if (some.length > 0) await store.print({ ...run, codes: some });
}
