import { CACHE_NAMES } from './here.ts';

/** What is kept in the browser beside the database: all names begin so. */
const NAMES = 'evenside.';

function forgetNames(storage: () => Storage): void {
  try {
    const kept = storage();
    for (const name of Object.keys(kept)) if (name.startsWith(NAMES)) kept.removeItem(name);
  } catch {
    // Where the browser has switched it off, nothing was kept.
  }
}

async function forgetWorker(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  const here = new URL('./', document.baseURI).href;
  for (const registration of await navigator.serviceWorker.getRegistrations())
    if (registration.scope === here) await registration.unregister();
}

async function forgetCaches(): Promise<void> {
  if (typeof caches === 'undefined') return;
  for (const name of await caches.keys()) if (name.startsWith(CACHE_NAMES)) await caches.delete(name);
}

/** Deletes all that the program keeps in this browser beside its database: choices, the kept program, the pose models. */
export async function forgetProgram(): Promise<void> {
  forgetNames(() => localStorage);
  forgetNames(() => sessionStorage);
  // The worker first, so that it keeps nothing anew.
  await forgetWorker().catch(() => undefined);
  await forgetCaches().catch(() => undefined);
}
