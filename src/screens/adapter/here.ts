import { POSE_MODELS } from '../../pose/model.ts';
import { askToKeepStorage, keepsStorage } from '../../record/persistence.ts';
import type { Store } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import { fail, type Result } from '../../result.ts';
import type { HereServices, KeptProgram } from '../stored/here-services.ts';

/** All caches of the program begin so: those of the service worker, and the pose models. */
export const CACHE_NAMES = 'evenside';

async function bytesIn(name: string): Promise<readonly { readonly url: string; readonly bytes: number }[]> {
  const cache = await caches.open(name);
  const sized = async (request: Request) => {
    const answer = await cache.match(request);
    return { url: request.url, bytes: answer ? (await answer.blob()).size : 0 };
  };
  return Promise.all((await cache.keys()).map(sized));
}

async function keptProgram(): Promise<KeptProgram> {
  if (typeof caches === 'undefined') return { site: 0, models: [] };
  const names = (await caches.keys()).filter((name) => name.startsWith(CACHE_NAMES));
  const files = (await Promise.all(names.map(bytesIn))).flat();
  const modelOf = (url: string) => POSE_MODELS.find((model) => new URL(url).pathname.endsWith(`/models/pose_${model}.task`));
  const models = files.flatMap(({ url, bytes }) => {
    const model = modelOf(url);
    return model ? [{ model, bytes }] : [];
  });
  const all = files.reduce((sum, { bytes }) => sum + bytes, 0);
  return { site: all - models.reduce((sum, { bytes }) => sum + bytes, 0), models };
}

/** What is stored here, as the screens ask for it. */
export const hereServices = (opening: Promise<Result<Store, StoreError>>): HereServices => ({
  async rows() {
    const store = await opening;
    const rows = store.ok ? await store.value.rows() : store;
    return rows.ok ? rows : fail({ kind: rows.error.kind });
  },
  program: () => keptProgram().catch(() => ({ site: 0, models: [] })),
  async room() {
    const told = await navigator.storage?.estimate?.().catch(() => null);
    return told?.usage === undefined || told.quota === undefined ? null : { used: told.usage, given: told.quota };
  },
  persistence: () => keepsStorage(),
  askToKeep: () => askToKeepStorage(),
});
