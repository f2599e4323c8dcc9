/** Made and deleted again at once; empty. */
export const PASSING_NAME = 'evenside-passing';

/** Not waited for longer: the fresh log is a precaution. Chosen: fifty times what it takes. */
const LONGEST_MS = 1000;

const done = (asked: IDBOpenDBRequest): Promise<IDBDatabase | undefined> =>
  new Promise((resolve) => {
    asked.onsuccess = () => resolve(asked.result);
    // What is wrong shows when the database itself is opened.
    asked.onerror = () => resolve(undefined);
  });

async function passing(indexedDB: IDBFactory): Promise<void> {
  (await done(indexedDB.open(PASSING_NAME)))?.close();
  await done(indexedDB.deleteDatabase(PASSING_NAME));
}

/**
 * Has the browser begin a fresh log, before anything is written. Chromium's databases (LevelDB) go on with the log they find. Was the browser ended in the middle of
 * a write, half a record lies at its end; what is written behind that half can't be read the next time, and Chromium then deletes every database of the site
 * (found by `tests/browser/kill.test.ts`). A database that is deleted makes it write out its log and begin another. Takes about 20 ms; elsewhere it does nothing.
 * Never fails.
 */
export async function freshLog(indexedDB: IDBFactory): Promise<void> {
  try {
    await Promise.race([passing(indexedDB), new Promise((resolve) => setTimeout(resolve, LONGEST_MS))]);
  } catch {
    // A browser that keeps nothing: told when the database itself is opened.
  }
}
