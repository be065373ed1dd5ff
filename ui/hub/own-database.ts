import { openDatabase } from './open-database.ts';

/**
 * One of the browser's own databases. It is opened anew where that failed, or where the browser has closed it meanwhile, as
 * some do to pages that they had frozen: a page is not to be without it until somebody loads it anew.
 */
export class OwnDatabase {
  readonly #open: () => Promise<IDBDatabase>;
  #opened: Promise<IDBDatabase> | null = null;

  constructor(name: string, make: (database: IDBDatabase) => void, factory?: IDBFactory) {
    this.#open = () => openDatabase(name, make, factory);
    void this.#now().catch(() => undefined);
  }

  /** Begins a transaction. */
  async begin(
    stores: string | string[],
    mode: IDBTransactionMode,
    options?: IDBTransactionOptions,
  ): Promise<IDBTransaction> {
    try {
      return (await this.#now()).transaction(stores, mode, options);
    } catch (error) {
      // A database that was closed says so by this.
      if (!(error instanceof DOMException) || error.name !== 'InvalidStateError') throw error;
      this.#opened = null;
      return (await this.#now()).transaction(stores, mode, options);
    }
  }

  #now(): Promise<IDBDatabase> {
    const opened = (this.#opened ??= this.#open());
    const over = () => {
      if (this.#opened === opened) this.#opened = null;
    };
    opened.then((database) => (database.onclose = over), over);
    return opened;
  }
}
