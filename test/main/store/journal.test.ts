import { expect, test } from 'vitest';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import { writeProfile } from '#core/shop/read-profile.ts';
import { type JobDocument, readJobDocument } from '#main/store/documents/job-document.ts';
import { JobStore } from '#main/store/documents/job-store.ts';
import { inThisThread } from '#main/store/documents/make-job.ts';
import { PrintRecord } from '#main/store/folded/print-record.ts';
import { ProgressBook } from '#main/store/folded/progress-book.ts';
import { SeenIds } from '#main/store/folded/seen-ids.ts';
import { StoreTrouble } from '#main/store/files/file-port.ts';
import type { Entries, JobDocuments, Numbered } from '#main/store/journal.ts';
import { MarkDesk } from '#main/store/mark-desk.ts';
import { milled, SMALL_JOB } from './small-shop.ts';

/** Entries in memory; while `broken`, all are refused. */
class MemoryEntries implements Entries<{ readonly seq: number }> {
  readonly kept: Numbered[] = [];
  lastSeq = 0;
  broken = false;
  trouble: StoreTrouble | null = null;

  get answered() {
    return { seq: this.kept.at(-1)?.seq ?? 0 };
  }

  append(entry: unknown, settle: Parameters<Entries<never>['append']>[1]): number {
    const seq = (this.lastSeq += 1);
    queueMicrotask(() => {
      this.trouble = this.broken ? new StoreTrouble('no room') : null;
      if (this.trouble === null) {
        this.kept.push({ seq, entry: structuredClone(entry) });
        settle.onDisk();
      } else {
        this.lastSeq = this.answered.seq;
        settle.refused(this.trouble);
      }
    });
    return seq;
  }

  entryAt = async (seq: number) => this.kept.find((each) => each.seq === seq)?.entry ?? null;
  lastEntry = async () => this.answered.seq;
  goOnFrom = (seq: number) => void (this.lastSeq = Math.max(this.lastSeq, seq));
  retire = () => undefined;
  close = async () => undefined;
  async *from(after: number, to = this.answered) {
    yield* this.kept.filter(({ seq }) => seq > after && seq <= to.seq);
  }
}

function memoryDocuments(kept: Map<string, string>): JobDocuments {
  const handle = (data: JobDocument) => {
    const document = {
      data,
      write: async () => void kept.set(document.data.id, JSON.stringify(document.data)),
    };
    return document;
  };
  return {
    names: async () => [...kept.keys()],
    open: async (name) => ({
      document: handle(readJobDocument(kept.get(name) ?? '')),
      older: false,
    }),
    putAside: async (name, error) => ({ file: name, reason: String(error), kept: name }),
    begin: async (document) => handle(document),
    remove: async (id) => void kept.delete(id),
    past: async () => [],
    readPast: async () => null,
    keepPast: async () => undefined,
    dropPast: async () => undefined,
    lastPlan: async () => null,
    keepPlan: async () => ({ head: 0, bytes: 0, sum: 0 }),
    index: async () => null,
    isAsKept: async () => true,
    planSlice: async () => new Uint8Array(),
  };
}

async function deskOn(documents: Map<string, string>, log: MemoryEntries) {
  const folded = {
    book: new ProgressBook(),
    ids: new SeenIds(),
    prints: new PrintRecord(),
    replacements: new Map<string, { job: string; door: string }>(),
    logFormat: 2,
  };
  const jobs = new JobStore(memoryDocuments(documents), 'test', {
    profileFor: (units) => ({ ...writeProfile(builtInProfile(units)) }),
    maker: inThisThread,
    marks: { last: () => folded.book.last, of: (job, since) => folded.book.marked(job, since) },
  });
  await jobs.read();
  await jobs.settle();
  const desk = new MarkDesk({
    open: () => ({ log, jobs, folded }),
    admit: () => undefined,
    onDisk: () => undefined,
  });
  return { jobs, desk };
}

test('jobs and marks need no more of what keeps them than the journal says: one in memory does', async () => {
  const documents = new Map<string, string>();
  const log = new MemoryEntries();
  const { jobs, desk } = await deskOn(documents, log);
  expect((await jobs.add(SMALL_JOB, () => false)).kind).toBe('saved');
  const code = jobs.all()[0]?.index.door(0).parts[0]?.code ?? '';
  const mark = milled(code);
  log.broken = true;
  await expect(desk.take(mark)).rejects.toThrow('no room');
  log.broken = false;
  const taken = await desk.take(mark);
  expect(taken).toMatchObject({ ok: true, accepted: { seq: 1 } });
  expect(await desk.take(mark)).toMatchObject({ ok: true, accepted: { seq: 1 } });
  expect(log.kept).toHaveLength(1);
  const later = await deskOn(documents, log);
  expect(later.jobs.ownerOf(code)?.document).toEqual(jobs.get(SMALL_JOB.id)?.document);
});
