import type { PoseModel } from '../pose/model.ts';
import { fail, ok, type Result } from '../result.ts';
import { type Ratio, ratio } from '../units.ts';
import { addressOf, forgetBundle, heldBundle, keepBundle, keptBundle } from './bundle-cache.ts';
import { type BundleFacts, bundleFacts, sha256Of } from './bundle-facts.ts';
import { download } from './download.ts';

/** Why a model bundle did not come. */
export type BundleError =
  | { readonly kind: 'bundle-missing'; readonly model: PoseModel }
  | { readonly kind: 'bundle-broken-off' }
  /** It came whole, twice, and is not the one that this version was made with. */
  | { readonly kind: 'bundle-wrong'; readonly model: PoseModel };

/** What stands around: replaced in tests. */
interface BundleNeeds {
  readonly facts: (model: PoseModel) => BundleFacts;
  readonly download: typeof download;
}

/**
 * A pose bundle, from this browser's own cache or from our own origin. It is checked by its hash before it is used or kept; one that is wrong is fetched
 * once more, past the browser's cache.
 * @param site address of the site's root
 * @param onProgress share of the bytes so far, 0 to 1
 */
export async function fetchBundle(
  site: string,
  model: PoseModel,
  onProgress: (share: Ratio) => void,
  needs: BundleNeeds = { facts: bundleFacts, download },
): Promise<Result<Uint8Array<ArrayBuffer>, BundleError>> {
  const { bytes, sha256 } = needs.facts(model);
  const isRight = async (bundle: Uint8Array<ArrayBuffer>) => (await sha256Of(bundle)) === sha256;
  const kept = await keptBundle(site, model, sha256);
  if (kept && (await isRight(kept))) {
    onProgress(ratio(1));
    return ok(kept);
  }
  if (kept) await forgetBundle(site, model, sha256);
  const held = heldBundle(site, model, sha256);
  if (held) {
    // There may be room by now.
    await keepBundle(site, model, sha256, held);
    onProgress(ratio(1));
    return ok(held);
  }
  for (const anew of [false, true]) {
    const came = await needs.download({ url: new URL(addressOf(site, model)), bytes, onProgress, anew });
    if (!came.ok) return fail(came.error.kind === 'missing' ? { kind: 'bundle-missing', model } : { kind: 'bundle-broken-off' });
    if (!(await isRight(came.value))) continue;
    await keepBundle(site, model, sha256, came.value);
    return ok(came.value);
  }
  return fail({ kind: 'bundle-wrong', model });
}
