import manifest from '../../models/manifest.json';
import type { PoseModel } from '../pose/model.ts';

/** What is known of a pose bundle beforehand: it is checked by this before it is used or kept. */
export interface BundleFacts {
  readonly bytes: number;
  /** Hexadecimal. */
  readonly sha256: string;
}

export function bundleFacts(model: PoseModel): BundleFacts {
  const bundle = manifest.bundles.find(({ name }) => name === model);
  if (!bundle) throw new Error(`bundleFacts requires a model of models/manifest.json, got ${model}`);
  return bundle;
}

/** SHA-256, hexadecimal. */
export async function sha256Of(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
