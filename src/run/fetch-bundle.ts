import type { PoseModel } from '../pose/model.ts';
import { fail, ok, type Result } from '../result.ts';
import { type Ratio, ratio } from '../units.ts';

/** Why a model bundle did not come. */
export type BundleError = { readonly kind: 'bundle-missing'; readonly model: PoseModel } | { readonly kind: 'bundle-broken-off' };

/**
 * Fetches a pose bundle from our own origin.
 * @param site address of the site's root
 * @param onProgress share of the bytes so far, 0 to 1; stays silent when the server does not tell the length
 */
export async function fetchBundle(
  site: string,
  model: PoseModel,
  onProgress: (share: Ratio) => void,
): Promise<Result<Uint8Array, BundleError>> {
  try {
    const answer = await fetch(new URL(`models/pose_${model}.task`, site));
    if (!answer.ok || !answer.body) return fail({ kind: 'bundle-missing', model });
    const total = Number(answer.headers.get('content-length') ?? 0);
    const parts: Uint8Array[] = [];
    let got = 0;
    for await (const part of answer.body) {
      parts.push(part);
      got += part.length;
      if (total > 0) onProgress(ratio(Math.min(1, got / total)));
    }
    const bundle = new Uint8Array(got);
    let at = 0;
    for (const part of parts) {
      bundle.set(part, at);
      at += part.length;
    }
    return ok(bundle);
  } catch {
    return fail({ kind: 'bundle-broken-off' });
  }
}
