import { join } from 'node:path';
import { putAside } from '../files/aside.ts';
import { documentText, findDocument, openDocument } from '../files/document.ts';
import { type FilePort, replaceFile } from '../files/file-port.ts';
import { sealed } from '../files/seal.ts';
import type { JobDocuments } from '../journal.ts';
import {
  DOCUMENT_FORMAT,
  documentName,
  type JobDocument,
  pastName,
  readJobDocument,
} from './job-document.ts';
import { indexFile, indexName, readIndexFile } from './index-file.ts';
import { isAsKept, isOfAnother, keepPlan, keptPlanName, readKeptLines } from './kept-plan.ts';

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
  history: [],
};

/** The jobs' documents in a folder, a file each, named by a hash of the job's id, with its last plan beside it. */
export function jobFiles(port: FilePort, folder: string): JobDocuments {
  const at = (name: string) => join(folder, name);
  const pastOf = async (id: string) => {
    const head = documentName(id).replace(/json$/, 'r');
    const names = (await port.list(folder)).filter((name) => name.startsWith(head));
    return names
      .map((name) => Number(/^(\d+)\.json$/.exec(name.slice(head.length))?.[1]))
      .filter((revision) => Number.isSafeInteger(revision))
      .sort((a, b) => b - a);
  };
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
      await port.remove(at(indexName(id)));
      await port.remove(at(keptPlanName(id)));
      for (const revision of await pastOf(id)) await port.remove(at(pastName(id, revision)));
      await port.flushFolder(folder);
    },
    past: pastOf,
    async readPast(id, revision) {
      const path = at(pastName(id, revision));
      if ((await port.size(path)) === null) return null;
      return (await findDocument(port, path, readJobDocument, DOCUMENT_FORMAT, EMPTY)).document.data;
    },
    keepPast: async (document) =>
      replaceFile(port, at(pastName(document.id, document.revision)), sealed(documentText(document))),
    dropPast: (id, revision) => port.remove(at(pastName(id, revision))),
    lastPlan: (id) => readKeptLines(port, at(keptPlanName(id))),
    async keepPlan(id, madeOf, { head, tables, lines }) {
      const kept = await keepPlan(port, at(keptPlanName(id)), madeOf, new Uint8Array(lines));
      await replaceFile(port, at(indexName(id)), indexFile(madeOf, kept, head, tables));
      return kept;
    },
    async index(id, madeOf) {
      const bytes = await port.read(at(indexName(id))).catch(() => null);
      const read = bytes === null ? null : readIndexFile(bytes, madeOf);
      // A version before this one, gone back to meanwhile, keeps its plan there and knows nothing of the index.
      return read === null || (await isOfAnother(port, at(keptPlanName(id)), madeOf)) ? null : read;
    },
    isAsKept: (id, plan) => isAsKept(port, at(keptPlanName(id)), plan),
    planSlice: (id, { head }, from, to) => port.slice(at(keptPlanName(id)), head + from, head + to),
  };
}
