/** How long the browser may take to open a database before the screen says that it cannot keep anything. */
const PATIENCE_MS = 5000;

/** Opens one of the browser's own databases, made by `make` the first time. Fails when it is refused or never answered. */
export function openDatabase(
  name: string,
  make: (database: IDBDatabase) => void,
  factory: IDBFactory = indexedDB,
): Promise<IDBDatabase> {
  const opened = new Promise<IDBDatabase>((done, failed) => {
    const late = setTimeout(() => failed(new Error('the browser did not open its database')), PATIENCE_MS);
    const request = factory.open(name, 1);
    request.onupgradeneeded = () => make(request.result);
    request.onsuccess = () => {
      clearTimeout(late);
      done(request.result);
    };
    request.onerror = () => {
      clearTimeout(late);
      failed(request.error ?? new Error('the browser opened no database'));
    };
  });
  // Told to whoever uses it; until then a failure waits.
  opened.catch(() => undefined);
  return opened;
}
