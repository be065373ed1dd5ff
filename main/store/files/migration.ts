import { isTree } from '#core/fields/read-shape.ts';

/** Written by a newer version of the program: it is left as it is, and the start refused. */
export class NewerFormat extends Error {
  constructor(what: string, found: number, known: number) {
    super(
      `${what} was written by a newer version of Shoulderline (format ${found}; this one knows up to ${known}): nothing was changed. Start that version, or another data folder.`,
    );
  }
}

/** The form that a document says it is in; 0 where it says none. */
export function formatOf(document: unknown): number {
  return isTree(document) && typeof document.format === 'number' ? document.format : 0;
}

/** From each older format to the next one. */
export type Steps = Readonly<Record<number, (older: unknown) => unknown>>;

/** What an older version wrote, in today's form: one step after another. */
export function migrate(input: unknown, from: number, to: number, steps: Steps): unknown {
  let now = input;
  for (let format = from; format < to; format += 1) {
    const step = steps[format];
    if (step === undefined) throw new Error(`no way from format ${format}`);
    now = step(now);
  }
  return now;
}
