import { join } from 'node:path';
import type { Plan } from '#core/plan/plan.ts';
import { JOBS_NAME } from '../files/folder-names.ts';
import { type FilePort, wordsOf } from '../files/file-port.ts';
import { documentName, type JobDocument, readJobDocument } from './job-document.ts';
import { planAnyway, planDocument } from './plan-document.ts';

/** A job as it lies in a data folder, with its plan; of one with faults what can be reckoned in spite of them. */
export interface FoundJob {
  readonly document: JobDocument;
  readonly plan: Plan;
}

/** The jobs that were found, or why it cannot be told which there are. */
export type LookedUp =
  | { readonly ok: true; readonly jobs: readonly FoundJob[] }
  | { readonly ok: false; readonly message: string };

/**
 * The jobs of this id or this name that lie in a data folder, each with its plan; none where there is no such folder. It
 * needs no lock and writes nothing, so a hub may hold the folder meanwhile. A document of this id that cannot be read is
 * told; one of another id is passed over.
 */
export async function lookUpJobs(
  port: Pick<FilePort, 'list' | 'read' | 'size'>,
  data: string,
  { id, job }: Pick<Plan, 'id' | 'job'>,
): Promise<LookedUp> {
  const folder = join(data, JOBS_NAME);
  const there = (await port.size(folder).catch(() => null)) !== null;
  const jobs: FoundJob[] = [];
  for (const name of there ? await port.list(folder) : []) {
    let document: JobDocument;
    try {
      document = readJobDocument((await port.read(join(folder, name)))?.toString('utf8') ?? '');
    } catch (error) {
      if (name !== documentName(id)) continue;
      const [reason = ''] = wordsOf(error).split('\n');
      return { ok: false, message: `${join(folder, name)} cannot be read: ${reason}` };
    }
    if (document.id === id || document.file.job === job) jobs.push(planned(document));
  }
  return { ok: true, jobs };
}

function planned(document: JobDocument): FoundJob {
  const plan = planDocument(document);
  return { document, plan: plan.ok ? plan.value : planAnyway(document) };
}
