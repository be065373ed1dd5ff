import { join } from 'node:path';
import { putAside } from '../files/aside.ts';
import { findDocument, openDocument } from '../files/document.ts';
import type { FilePort } from '../files/file-port.ts';
import type { JobDocuments } from '../journal.ts';
import { DOCUMENT_FORMAT, documentName, type JobDocument, readJobDocument } from './job-document.ts';
import { keepPlan, keptOf, keptPlanName, readKeptPlan } from './kept-plan.ts';

const JOB_FILE = /^[0-9a-f]{32}\.json$/;

/** Is this the name of a job's document? */
export function isJobFile(name: string): boolean {
  return JOB_FILE.test(name);
}

const EMPTY: JobDocument = {
  format: DOCUMENT_FORMAT,
  id: '',
  revision: 0,
  added: null,
  file: {},
  profile: {},
  measured: {},
  asMarked: [],
  binned: null,
};

/** The jobs' documents in a folder, a file each, named by a hash of the job's id, with its last plan beside it. */
export function jobFiles(port: FilePort, folder: string): JobDocuments {
  const at = (name: string) => join(folder, name);
  return {
    async names() {
      await port.makeFolder(folder);
      return (await port.list(folder)).filter(isJobFile);
    },
    open: (name) => findDocument(port, at(name), readJobDocument, DOCUMENT_FORMAT, EMPTY),
    putAside: (name, error) => putAside(port, at(name), error),
    begin: (document) => openDocument(port, at(documentName(document.id)), readJobDocument, document),
    async remove(id) {
      await port.remove(at(documentName(id)));
      await port.remove(at(keptPlanName(id)));
      await port.flushFolder(folder);
    },
    lastPlan: (id) => readKeptPlan(port, at(keptPlanName(id)), id),
    async keepPlan(id, { hash, version }, plan) {
      const kept = await keptOf(port, at(keptPlanName(id)));
      if (kept?.hash === hash && kept.version === version) return;
      await keepPlan(port, at(keptPlanName(id)), { hash, version }, plan);
    },
  };
}
