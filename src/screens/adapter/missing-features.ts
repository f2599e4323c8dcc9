import { littleMemory } from '../../run/little-memory.ts';
import { hasWebGl2 } from '../../run/webgl2.ts';
import type { Limit, MissingFeature } from '../services.ts';

/** What this browser lacks without which nothing works. */
export const missingFeatures = (): readonly MissingFeature[] =>
  // Elsewhere browsers hide the camera and what keeps the site, so nothing more can be said of them.
  globalThis.isSecureContext ? [] : ['secure-context'];

/** What goes less well in this browser, or on this machine, than elsewhere. Module workers are only asked for when one is started. */
export function limitsHere(): readonly Limit[] {
  const limits: Limit[] = [];
  if (!hasWebGl2()) limits.push('no-webgl2');
  if (typeof VideoDecoder === 'undefined' || typeof VideoFrame === 'undefined') limits.push('no-webcodecs');
  if (typeof Worker === 'undefined' || typeof OffscreenCanvas === 'undefined') limits.push('on-page');
  if (littleMemory()) limits.push('little-memory');
  return limits;
}
