import { isBundleKept, mayKeep } from '../../run/bundle-cache.ts';
import { bundleFacts } from '../../run/bundle-facts.ts';
import { sharedBundle } from '../../run/shared-fetch.ts';
import { createSite, type ModelKeeper, type Site, type SiteWorker } from './site.ts';

/** How often a page that stays open asks whether there is a new version, ms. Chosen: it may be open for days. */
const ASK_MS = 60 * 60 * 1000;

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
      await navigator.serviceWorker.ready;
    },
  };
}

const siteAddress = (): string => new URL('./', document.baseURI).href;

const modelsHere: ModelKeeper = {
  isKept: (model) => isBundleKept(siteAddress(), model, bundleFacts(model).sha256),
  async keep(model, onShare) {
    await sharedBundle(siteAddress(), model, onShare);
    return modelsHere.isKept(model);
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
