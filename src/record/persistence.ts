/** Whether the browser promised to keep what is stored when the disk runs short. */
export type Persistence = 'kept' | 'not-kept' | 'unknown';

/** Whether the browser has promised it. Asks nobody. */
export async function keepsStorage(
  storage: Pick<StorageManager, 'persisted'> | undefined = globalThis.navigator?.storage,
): Promise<Persistence> {
  try {
    if (!storage) return 'unknown';
    return (await storage.persisted()) ? 'kept' : 'not-kept';
  } catch {
    return 'unknown';
  }
}

/**
 * Asks the browser to keep this site's data; some browsers ask the person. To be called once the first set is stored: then there is
 * something to lose, and the question makes sense. Asking again after a yes changes nothing.
 */
export async function askToKeepStorage(
  storage: Pick<StorageManager, 'persist' | 'persisted'> | undefined = globalThis.navigator?.storage,
): Promise<Persistence> {
  try {
    if (!storage) return 'unknown';
    return (await storage.persisted()) || (await storage.persist()) ? 'kept' : 'not-kept';
  } catch {
    return 'unknown';
  }
}
