import { z } from 'zod';
import { markRequest } from '#core/api/marks-api.ts';
import type { Mark } from '#core/marks/mark.ts';
import { OwnDatabase } from './own-database.ts';

/** A mark that this screen keeps until the hub has answered it. */
export interface Kept {
  /** Marks are sent in this order. */
  readonly order: number;
  readonly mark: Mark;
  readonly job: string;
  readonly door: string;
  readonly part: string;
  /** Why the hub refused it, once it did; a person settles it. */
  readonly refused?: { readonly code: string; readonly message: string };
}

const keptShape = z.object({
  order: z.number(),
  mark: markRequest,
  job: z.string(),
  door: z.string(),
  part: z.string(),
  refused: z.object({ code: z.string(), message: z.string() }).exactOptional(),
});

const STORE = 'marks';

/** Where a screen keeps marks that the hub has not answered: the browser's own database, flushed before it says so. */
export class KeptMarks {
  readonly #database: OwnDatabase;

  constructor(name = 'shoulderline', factory?: IDBFactory) {
    this.#database = new OwnDatabase(
      name,
      (database) => database.createObjectStore(STORE, { keyPath: 'order', autoIncrement: true }),
      factory,
    );
  }

  /** Puts a mark away; settles once it is on disk. */
  async add(kept: Omit<Kept, 'order'>): Promise<Kept> {
    const order = await this.#write((store) => store.add(kept));
    return { ...kept, order: Number(order) };
  }

  /** Every kept mark, in order. What cannot be read, after a change of version perhaps, is passed over. */
  async all(): Promise<Kept[]> {
    const transaction = await this.#database.begin(STORE, 'readonly');
    const found = await new Promise<unknown[]>((done, failed) => {
      const request = transaction.objectStore(STORE).getAll();
      request.onsuccess = () => done(request.result);
      request.onerror = () => failed(request.error ?? new Error('the database was not read'));
    });
    return found.flatMap((each) => {
      const read = keptShape.safeParse(each);
      return read.success ? [read.data] : [];
    });
  }

  async change(kept: Kept): Promise<void> {
    await this.#write((store) => store.put(kept));
  }

  async remove(order: number): Promise<void> {
    await this.#write((store) => store.delete(order));
  }

  async #write(
    act: (store: IDBObjectStore) => IDBRequest<IDBValidKey> | IDBRequest<undefined>,
  ): Promise<unknown> {
    const transaction = await this.#database.begin(STORE, 'readwrite', { durability: 'strict' });
    return new Promise((done, failed) => {
      const request = act(transaction.objectStore(STORE));
      transaction.oncomplete = () => done(request.result);
      transaction.onabort = () => failed(transaction.error ?? new Error('the database did not take it'));
    });
  }
}
