import type { PoseModel } from '../pose/model.ts';
import type { Result } from '../result.ts';
import type { Ratio } from '../units.ts';
import { type BundleError, fetchBundle } from './fetch-bundle.ts';

interface Going {
  readonly bundle: Promise<Result<Uint8Array<ArrayBuffer>, BundleError>>;
  readonly told: Set<(share: Ratio) => void>;
}

const going = new Map<string, Going>();

/** `fetchBundle`, one download of a model at a time: who asks meanwhile waits for the same, and hears how far it is. The bytes are not to be changed. */
export async function sharedBundle(
  site: string,
  model: PoseModel,
  onProgress: (share: Ratio) => void,
): Promise<Result<Uint8Array<ArrayBuffer>, BundleError>> {
  const name = `${site} ${model}`;
  const told = going.get(name)?.told ?? new Set();
  const now: Going = going.get(name) ?? {
    told,
    bundle: fetchBundle(site, model, (share) => {
      for (const tell of told) tell(share);
    }),
  };
  going.set(name, now);
  told.add(onProgress);
  try {
    return await now.bundle;
  } finally {
    told.delete(onProgress);
    going.delete(name);
  }
}
