import { isBundleKept, mayKeep } from '../../run/bundle-cache.ts';
import { bundleFacts } from '../../run/bundle-facts.ts';
import { sharedBundle } from '../../run/shared-fetch.ts';
import { createSite, type Kept, type ModelKeeper, type Site, type SiteWorker } from './site.ts';

/** How often a page that stays open asks whether there is a new version, ms. Chosen: it may be open for days. */
const ASK_MS = 60 * 60 * 1000;

const siteAddress = (): string => new URL('./', document.baseURI).href;

/** The site without its models, bytes, about: with less room than that, it was the room. */
const SITE_BYTES = 15e6;

/** Begins the name of the cache in which the service worker keeps the site. */
const SITE_CACHE = 'evenside-precache';

/** Whether the service worker has the whole site: at once where it had it before. */
async function isInstalled(registration: ServiceWorkerRegistration): Promise<boolean> {
  const { active, waiting, installing } = registration;
  if (active || waiting) return navigator.serviceWorker.ready.then(() => true);
  // It has failed already.
  if (!installing) return forgetHalfSite().then(() => false);
  return new Promise((resolve) => {
    const hear = () => {
      if (installing.state === 'activated') resolve(true);
      // What it had fetched before takes room that sets may need, and nobody uses it.
      if (installing.state === 'redundant') void forgetHalfSite().then(() => resolve(false));
    };
    installing.addEventListener('statechange', hear);
    hear();
  });
}

async function forgetHalfSite(): Promise<void> {
  try {
    for (const name of await caches.keys())
      if (name.startsWith(SITE_CACHE) && name.endsWith(siteAddress())) await caches.delete(name);
  } catch {
    // It can't be reached: nothing is there.
  }
}

/** Tried by writing as much: browsers tell pages of more room than there is, so that they learn nothing of the disk. */
async function whyNotKept(): Promise<Kept> {
  const name = 'evenside-trial';
  try {
    const cache = await caches.open(name);
    await cache.put(siteAddress(), new Response(new Uint8Array(SITE_BYTES)));
    return 'failed';
  } catch (cause) {
    return cause instanceof DOMException && cause.name === 'QuotaExceededError' ? 'no-room' : 'failed';
  } finally {
    await caches.delete(name).catch(() => false);
  }
}

/** The service worker of the built site; null where the browser has none, or the page is not the built one. */
function workerHere(): SiteWorker | null {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return null;
  let skip: () => void = () => undefined;
  return {
    take: () => skip(),
    async start(onWaiting, onTaken) {
      const { Workbox } = await import('workbox-window');
      const workbox = new Workbox(new URL('sw.js', document.baseURI).href, { updateViaCache: 'none' });
      skip = () => workbox.messageSkipWaiting();
      // The first one only takes the page into its care.
      let controlled = navigator.serviceWorker.controller !== null;
      navigator.serviceWorker.addEventListener('controllerchange', () => {
        if (controlled) onTaken();
        controlled = true;
      });
      workbox.addEventListener('waiting', onWaiting);
      // All may be deleted at any moment: what comes after that undoes itself.
      const registration = mayKeep() ? await workbox.register({ immediate: true }) : undefined;
      if (!mayKeep()) await registration?.unregister();
      if (!registration || !mayKeep()) throw new Error('start requires a registration, got none');
      setInterval(() => registration.update().catch(() => undefined), ASK_MS);
      return (await isInstalled(registration)) ? 'kept' : await whyNotKept();
    },
  };
}

const modelsHere: ModelKeeper = {
  isKept: (model) => isBundleKept(siteAddress(), model, bundleFacts(model).sha256),
  async keep(model, onShare) {
    const came = await sharedBundle(siteAddress(), model, onShare);
    if (!came.ok) return 'failed';
    return (await modelsHere.isKept(model)) ? 'kept' : 'no-room';
  },
};

const savesData = (): boolean => {
  const { connection } = navigator as Navigator & { readonly connection?: { readonly saveData?: boolean } };
  return connection?.saveData === true;
};

/** The one of this page. */
export const site: Site = createSite({
  worker: workerHere(),
  models: modelsHere,
  locks: 'locks' in navigator ? navigator.locks : null,
  saveData: savesData(),
  reload: () => window.location.reload(),
});
