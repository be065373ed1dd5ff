import type { AcceptedMark } from '#core/marks/mark.ts';
import { type LogEntry, LOG_FORMAT, readEntry } from '../log/log-entry.ts';
import type { ReadLine } from '../log/log-line.ts';
import { NewerFormat } from '../files/migration.ts';
import type { Folded } from './snapshot.ts';

/** Small enough that what is held back is young when it goes. */
const RUN = 2000;

/** Folds the log's entries as they are read: marks in runs, so that each door's tables are copied once a run. */
export class EntryFold {
  readonly #into: Folded;
  #run: AcceptedMark[] = [];
  /** Lines whose checksum held but whose kind no version up to this one wrote. */
  strange = 0;

  constructor(into: Folded) {
    this.#into = into;
  }

  take({ seq, entry }: ReadLine): void {
    const read = readEntry(entry, this.#into.logFormat);
    if (read === null) this.strange += 1;
    else this.#fold(read, seq);
  }

  #fold(read: LogEntry, seq: number): void {
    switch (read.kind) {
      case 'format':
        if (read.format > LOG_FORMAT) throw new NewerFormat('the log', read.format, LOG_FORMAT);
        this.#into.logFormat = read.format;
        break;
      case 'mark':
        this.#run.push(Object.assign(read.mark, { seq }));
        if (this.#run.length >= RUN) this.finish();
        break;
      case 'print':
        this.#into.prints.take(read.print);
        break;
      case 'restored':
        break;
    }
  }

  /** Folds what is still held back. */
  finish(): void {
    this.#into.book.takeAll(this.#run);
    for (const accepted of this.#run) rememberMark(this.#into, accepted);
    this.#run = [];
  }
}

/** Remembers a mark's id, and the code of the part that it replaced. */
export function rememberMark(into: Folded, { seq, mark, job, door, replacement }: AcceptedMark): void {
  into.ids.add(mark.id, seq);
  if (replacement !== undefined) into.replacements.set(replacement.code, { job, door });
}
