import { createHash } from 'node:crypto';
import { z } from 'zod';
import { asMarked } from '#core/api/jobs-api.ts';
import { revisionNote } from '#core/api/revisions-api.ts';
import { completeDefaults } from '#core/job/complete-defaults.ts';
import { isTree } from '#core/fields/read-shape.ts';
import { readJob } from '#core/job/read-job.ts';
import { followJob } from '#core/measured/follow-job.ts';
import { FIRST_WAYS, firstFields } from './first-fields.ts';
import { formatOf, migrate, NewerFormat } from '../files/migration.ts';

/** So many earlier revisions of a job are kept. */
export const MOST_PAST = 20;

/** The newest form of a job's document that this version knows. */
export const DOCUMENT_FORMAT = 5;

/** A job as it lies in its file: the job file as saved, its defaults complete, with the shop's tools of that day. */
export const jobDocument = z.object({
  format: z.literal(DOCUMENT_FORMAT),
  id: z.string(),
  revision: z.number().int(),
  /** When it was first saved; jobs stand in this order. Null for those saved before this was kept. */
  added: z.string().nullable(),
  file: z.record(z.string(), z.unknown()),
  profile: z.record(z.string(), z.unknown()),
  /** Sizes as they came out; empty while nothing was measured. */
  measured: z.record(z.string(), z.unknown()),
  /** Settings that something was marked by and that are others since. */
  asMarked: z.array(asMarked),
  /** When it was put into the bin; null while it is not there. A job never put there may lack it. */
  binned: z.string().nullable().default(null),
  /** The last saves, each with what it changed, the newest last. Those from before this was kept are not in it. */
  history: z.array(revisionNote).default([]),
});
export type JobDocument = z.infer<typeof jobDocument>;

const STEPS = {
  1: (older: unknown) => (isTree(older) ? { ...older, format: 2, added: null, measured: {} } : older),
  2: (older: unknown) => (isTree(older) ? { ...older, format: 3, asMarked: [] } : older),
  3: (older: unknown) => (isTree(older) ? { ...older, format: 4, file: complete(older.file) } : older),
  4: (older: unknown) =>
    isTree(older)
      ? {
          ...older,
          format: 5,
          profile: inFirstWays(older.profile),
          measured: sizeBySize(older.file, older.measured),
        }
      : older,
};

/** Up to the third form a job was kept as sparse as it was sent, and meant what was built in then. */
function complete(file: unknown): unknown {
  return isTree(file) ? completeDefaults(file, firstFields) : file;
}

/** Up to the fourth form there was one way for each cut: a job that is running goes on in it. */
function inFirstWays(profile: unknown): unknown {
  return isTree(profile) ? { ...profile, ways: FIRST_WAYS } : profile;
}

/** Up to the fourth form one measured length was that of every door, of whatever size: now it says so of each size. */
function sizeBySize(file: unknown, measured: unknown): unknown {
  const job = readJob(file);
  return job.ok && isTree(measured) ? followJob(measured, null, job.value) : measured;
}

/** A document's text as this version's form. Throws NewerFormat, or what is wrong with it. */
export function readJobDocument(text: string): JobDocument {
  const read: unknown = JSON.parse(text);
  const format = formatOf(read);
  if (format > DOCUMENT_FORMAT) throw new NewerFormat('a job', format, DOCUMENT_FORMAT);
  return jobDocument.parse(migrate(read, format, DOCUMENT_FORMAT, STEPS));
}

/** The name of the file that an earlier revision of a job lies in, beside its document. */
export function pastName(id: string, revision: number): string {
  return documentName(id).replace(/\.json$/, `.r${revision}.json`);
}

/** The name of a job's file: from its id by a hash, so that no path is ever built from what people type. */
export function documentName(id: string): string {
  return `${createHash('sha256').update(id).digest('hex').slice(0, 32)}.json`;
}
