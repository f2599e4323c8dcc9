import { serialize } from 'node:v8';

/** Calls `then` with the raw database of a browser, past the program. */
export function raw<T>(indexedDB: IDBFactory, then: (db: IDBDatabase) => Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('evenside');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      then(opening.result)
        .then(resolve, reject)
        .finally(() => opening.result.close());
    };
  });
}

export const answerOf = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

export type RawRows = Readonly<Record<string, readonly Readonly<Record<string, unknown>>[]>>;

/** Every row of every table as it lies there. */
export const rawRows = (indexedDB: IDBFactory): Promise<RawRows> =>
  raw(indexedDB, async (db) => {
    const rows: [string, readonly Readonly<Record<string, unknown>>[]][] = [];
    for (const name of db.objectStoreNames) {
      rows.push([name, await answerOf(db.transaction(name).objectStore(name).getAll())]);
    }
    return Object.fromEntries(rows);
  });

/** Puts a row into a table past the program. */
export const putRaw = (indexedDB: IDBFactory, table: string, row: unknown): Promise<unknown> =>
  raw(indexedDB, (db) => answerOf(db.transaction(table, 'readwrite').objectStore(table).put(row)));

const FRACTION_BYTES = 8;

/** The ways in which a text or a number may stand in bytes: UTF-8 and UTF-16 text, a double in either order of its bytes. */
function marksOf(value: string | number): readonly Buffer[] {
  const text = String(value);
  const texts = [Buffer.from(text, 'utf8'), Buffer.from(text, 'utf16le')];
  if (typeof value === 'string') return texts;
  const double = Buffer.alloc(FRACTION_BYTES);
  double.writeDoubleLE(value);
  return [...texts, double, Buffer.from(double).reverse()];
}

/** Those of some values that can be read in the rows' bytes. */
export function readableIn(rows: RawRows, values: Iterable<string | number>): readonly (string | number)[] {
  // What the engine writes down of a value when it stores it.
  const bytes = serialize(rows);
  return [...values].filter((value) => marksOf(value).some((mark) => bytes.includes(mark)));
}
