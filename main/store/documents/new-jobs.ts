import { randomBytes } from 'node:crypto';
import type { Fault } from '#core/fields/fault.ts';
import { isTree } from '#core/fields/read-shape.ts';
import type { Turns } from '../files/turns.ts';
import { howMuchIn } from './how-much.ts';
import type { NotSaved, SaveOptions } from './job-change.ts';
import { readJobDocument } from './job-document.ts';
import { inMemory, type JobKeeper } from './job-keeper.ts';
import type { JobMaker, Profiles } from './job-maker.ts';
import type { JobShelf } from './job-shelf.ts';
import type { StoredJob } from './stored-job.ts';

export type Saved =
  | {
      readonly kind: 'saved';
      readonly stored: StoredJob;
      readonly codesChanged: boolean;
      /** Every part with its code, as text of an answer. */
      readonly parts: string;
    }
  | NotSaved;

/** What a new job needs of who holds the others. */
export interface AddNeeds {
  readonly keeper: JobKeeper;
  readonly shelf: JobShelf;
  readonly maker: JobMaker;
  readonly profiles: () => Profiles;
  /** One after another: no two new jobs take the same id or code. */
  readonly turns: Turns;
}

/** Saves new jobs. */
export class NewJobs {
  readonly #need: AddNeeds;
  #lastAdded = 0;

  constructor(need: AddNeeds) {
    this.#need = need;
  }

  /** Saves a new job. Where its codes exist already it gets a fresh id. `seen` tells of ids that were used before and removed. */
  async add(file: unknown, seen: (id: string) => boolean, { signal }: SaveOptions = {}): Promise<Saved> {
    const { keeper, shelf, maker, profiles, turns } = this.#need;
    if (!isTree(file)) return { kind: 'faults', faults: await this.#faultsOf(file) };
    const taken = (id: string) =>
      shelf.get(id) !== undefined || shelf.getBinned(id) !== undefined || seen(id);
    const own = file.id ?? file.job;
    let codesChanged = typeof own === 'string' && taken(own);
    let id = codesChanged ? freshId() : null;
    const text = JSON.stringify(file);
    for (;;) {
      const made = await maker.makeJob(
        {
          make: 'add',
          file: text,
          id,
          added: this.#addedNow(),
          at: new Date().toISOString(),
          profiles: profiles(),
        },
        { ...howMuchIn(file), signal },
      );
      if (!made.ok) return { kind: 'faults', faults: made.faults };
      const document = readJobDocument(made.document);
      const stored = await turns.take(async () => {
        const fresh = inMemory(made, document, made.hash);
        if (taken(document.id) || shelf.sharesCode(fresh)) return null;
        return keeper.write(made, document, made.hash);
      });
      if (stored !== null) return { kind: 'saved', stored, codesChanged, parts: made.parts };
      codesChanged = true;
      id = freshId();
    }
  }

  async #faultsOf(file: unknown): Promise<readonly Fault[]> {
    const made = await this.#need.maker.makeJob(
      {
        make: 'add',
        file: JSON.stringify(file),
        id: null,
        added: '',
        at: '',
        profiles: this.#need.profiles(),
      },
      { doors: 0, marks: 0 },
    );
    return made.ok ? [] : made.faults;
  }

  /** Now, but after every other job, whatever a clock that was set back says: jobs stand in this order. */
  #addedNow(): string {
    const times = [...this.#need.shelf.all(), ...this.#need.shelf.bin()].map(({ document }) =>
      Date.parse(document.added ?? ''),
    );
    const last = times.reduce((most, time) => (time > most ? time : most), this.#lastAdded);
    this.#lastAdded = Math.max(Date.now(), last + 1);
    return new Date(this.#lastAdded).toISOString();
  }
}

function freshId(): string {
  return `job-${randomBytes(5).toString('hex')}`;
}
