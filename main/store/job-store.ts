import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import type { Low } from 'lowdb';
import { isTree } from '#core/job/read-shape.ts';
import { readJob } from '#core/job/read-job.ts';
import type { Fault } from '#core/plan/plan.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import { writeProfile } from '#core/shop/read-profile.ts';
import { openDocument } from './document.ts';
import type { FilePort } from './file-port.ts';
import {
  DOCUMENT_FORMAT,
  documentName,
  jobDocument,
  type JobDocument,
  openJob,
  type StoredJob,
} from './job-document.ts';

/** What happened to a document that could not be read: it is kept aside, never reset in silence. */
export interface DocumentTrouble {
  readonly file: string;
  readonly reason: string;
  readonly kept: string;
}

export type Saved =
  | { readonly kind: 'saved'; readonly stored: StoredJob; readonly codesChanged: boolean }
  | { readonly kind: 'faults'; readonly faults: readonly Fault[] }
  | { readonly kind: 'stale'; readonly revision: number }
  | { readonly kind: 'unknown' };

/** A document from a newer version of the program: nothing is touched. */
export class NewerFormat extends Error {}

/** The jobs, one file each. */
export class JobStore {
  readonly #port: FilePort;
  readonly #folder: string;
  readonly #jobs = new Map<string, StoredJob>();
  readonly #files = new Map<string, Low<JobDocument>>();
  readonly #owners = new Map<string, string>();
  readonly troubles: DocumentTrouble[] = [];

  constructor(port: FilePort, folder: string) {
    this.#port = port;
    this.#folder = folder;
  }

  /** Reads every job's file. One that cannot be read is renamed and reported; one from a newer version stops the start. */
  async open(): Promise<void> {
    await this.#port.makeFolder(this.#folder);
    for (const name of await this.#port.list(this.#folder)) {
      if (!/^[0-9a-f]{32}\.json$/.test(name)) continue;
      const path = join(this.#folder, name);
      try {
        const document = await openDocument<JobDocument>(this.#port, path, readDocument, EMPTY);
        const opened = openJob(document.data);
        if (!opened.ok)
          throw new Error(opened.faults.map((fault) => `${fault.path}: ${fault.message}`).join('; '));
        this.#keep(opened.value, document);
      } catch (error) {
        if (error instanceof NewerFormat) throw error;
        const kept = `${path}.unreadable`;
        await this.#port.rename(path, kept);
        this.troubles.push({
          file: name,
          reason: error instanceof Error ? error.message : String(error),
          kept,
        });
      }
    }
  }

  get(id: string): StoredJob | undefined {
    return this.#jobs.get(id);
  }

  all(): StoredJob[] {
    return [...this.#jobs.values()];
  }

  /** The job whose first blank carries this code. */
  ownerOf(code: string): StoredJob | undefined {
    const id = this.#owners.get(code);
    return id === undefined ? undefined : this.#jobs.get(id);
  }

  /** Saves a new job. Where its codes exist already it gets a fresh id. `seen` tells of ids that were used before and removed. */
  async add(file: unknown, seen: (id: string) => boolean): Promise<Saved> {
    const read = readJob(file);
    if (!read.ok) return { kind: 'faults', faults: read.faults };
    if (!isTree(file)) return { kind: 'unknown' };
    let id = read.value.id;
    const profile = writeProfile(builtInProfile(read.value.units));
    const taken = (candidate: string) => this.#jobs.has(candidate) || seen(candidate);
    let codesChanged = false;
    for (;;) {
      if (!taken(id)) {
        const opened = openJob({ format: DOCUMENT_FORMAT, id, revision: 1, file, profile });
        if (!opened.ok) return { kind: 'faults', faults: opened.faults };
        if (![...opened.value.index.parts.keys()].some((code) => this.#owners.has(code))) {
          await this.#write(opened.value);
          return { kind: 'saved', stored: opened.value, codesChanged };
        }
      }
      codesChanged = true;
      id = `job-${randomBytes(5).toString('hex')}`;
    }
  }

  /** Saves a changed job over the revision that the writer saw. Its id, and so its stickers' codes, stay. */
  async update(id: string, revision: number, file: unknown): Promise<Saved> {
    const before = this.#jobs.get(id);
    if (before === undefined) return { kind: 'unknown' };
    if (before.document.revision !== revision) return { kind: 'stale', revision: before.document.revision };
    const read = readJob(file);
    if (!read.ok) return { kind: 'faults', faults: read.faults };
    const sameUnits = read.value.units === before.plan.units;
    const profile = sameUnits ? before.document.profile : writeProfile(builtInProfile(read.value.units));
    const opened = openJob({
      format: DOCUMENT_FORMAT,
      id,
      revision: revision + 1,
      file: file as Record<string, unknown>,
      profile,
    });
    if (!opened.ok) return { kind: 'faults', faults: opened.faults };
    await this.#write(opened.value);
    return { kind: 'saved', stored: opened.value, codesChanged: false };
  }

  async remove(id: string): Promise<boolean> {
    const stored = this.#jobs.get(id);
    if (stored === undefined) return false;
    await this.#port.remove(join(this.#folder, documentName(id)));
    this.#jobs.delete(id);
    this.#files.delete(id);
    for (const code of stored.index.parts.keys()) this.#owners.delete(code);
    return true;
  }

  async #write(stored: StoredJob): Promise<void> {
    const { id } = stored.document;
    const path = join(this.#folder, documentName(id));
    const document =
      this.#files.get(id) ??
      (await openDocument<JobDocument>(this.#port, path, readDocument, stored.document));
    document.data = stored.document;
    await document.write();
    this.#keep(stored, document);
  }

  #keep(stored: StoredJob, document: Low<JobDocument>): void {
    const { id } = stored.document;
    for (const code of this.#jobs.get(id)?.index.parts.keys() ?? []) this.#owners.delete(code);
    this.#jobs.set(id, stored);
    this.#files.set(id, document);
    for (const code of stored.index.parts.keys()) this.#owners.set(code, id);
  }
}

const EMPTY: JobDocument = { format: DOCUMENT_FORMAT, id: '', revision: 0, file: {}, profile: {} };

function readDocument(text: string): JobDocument {
  const read: unknown = JSON.parse(text);
  if (isTree(read) && typeof read.format === 'number' && read.format > DOCUMENT_FORMAT)
    throw new NewerFormat(
      `a job was written by a newer version (format ${read.format}); this one knows format ${DOCUMENT_FORMAT}`,
    );
  return jobDocument.parse(read);
}
