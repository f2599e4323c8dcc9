import type { PoseModel } from '../pose/model.ts';

/** Pose bundles that this browser keeps, so that they are there without a network. Named `evenside-...`, as all that is deleted together. */
const CACHE = 'evenside-models';

/** Where a bundle is kept: its own hash is in the name, so that another one never stands for it. */
const keyOf = (site: string, model: PoseModel, sha256: string): string => `${addressOf(site, model)}?sha256=${sha256}`;

/** Where a bundle lies on the server. @param site address of the site's root */
export const addressOf = (site: string, model: PoseModel): string => new URL(`models/pose_${model}.task`, site).href;

/** Bundles for which there was no room, by where they would be kept: used as long as the page is open. */
const held = new Map<string, Uint8Array<ArrayBuffer>>();

let keeps = true;

/** From now on nothing is kept: all is being deleted. */
export function stopKeeping(): void {
  keeps = false;
}

/** Whether anything may be kept. */
export const mayKeep = (): boolean => keeps;

const cacheHere = (): CacheStorage | null => (typeof caches === 'undefined' ? null : caches);

/** Whether a bundle is kept, without reading it. */
export async function isBundleKept(site: string, model: PoseModel, sha256: string): Promise<boolean> {
  const found = await cacheHere()
    ?.match(keyOf(site, model, sha256), { cacheName: CACHE })
    .catch(() => undefined);
  return found !== undefined;
}

/** A kept bundle; null: it is not kept, or can't be read. */
export async function keptBundle(site: string, model: PoseModel, sha256: string): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    const found = await cacheHere()?.match(keyOf(site, model, sha256), { cacheName: CACHE });
    return found ? new Uint8Array(await found.arrayBuffer()) : null;
  } catch {
    return null;
  }
}

/** A bundle of this visit for which there was no room; null: there is none. */
export const heldBundle = (site: string, model: PoseModel, sha256: string): Uint8Array<ArrayBuffer> | null =>
  held.get(keyOf(site, model, sha256)) ?? null;

/**
 * Keeps a bundle, in the place of an older one of the same model. Where the browser has no room for it nothing of it stays in the browser: the page holds it while it is
 * open, and all works as before for this visit.
 */
export async function keepBundle(site: string, model: PoseModel, sha256: string, bundle: Uint8Array<ArrayBuffer>): Promise<void> {
  const key = keyOf(site, model, sha256);
  held.set(key, bundle);
  try {
    const cache = keeps ? await cacheHere()?.open(CACHE) : null;
    if (!cache) return;
    const headers = { 'Content-Type': 'application/octet-stream', 'Content-Length': String(bundle.length) };
    const put = () => cache.put(key, new Response(bundle, { headers }));
    const forgetOlder = async () => {
      const older = await cache.keys(addressOf(site, model), { ignoreSearch: true });
      for (const { url } of older) if (url !== key) await cache.delete(url);
    };
    // The older one may be what takes the room.
    await put().catch(() => forgetOlder().then(put));
    held.delete(key);
    await forgetOlder();
  } catch {
    // Full, or switched off.
    await forgetBundle(site, model, sha256);
  }
}

/** Lets go of a kept bundle that turned out to be another one than its name says. */
export async function forgetBundle(site: string, model: PoseModel, sha256: string): Promise<void> {
  try {
    const cache = await cacheHere()?.open(CACHE);
    await cache?.delete(keyOf(site, model, sha256));
  } catch {
    // As if it had never been there.
  }
}
