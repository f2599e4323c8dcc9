import type { MissingFeature } from '../services.ts';

function hasWebGl2(): boolean {
  const context = document.createElement('canvas').getContext('webgl2');
  // A page may hold only few contexts at a time; this one was only asked for.
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return context !== null;
}

/**
 * What this browser lacks. Module workers are not asked for: every browser with WebCodecs has had them for longer, and asking means
 * starting one.
 */
export function missingFeatures(): readonly MissingFeature[] {
  // Elsewhere browsers hide WebCodecs and the camera, so nothing more can be said of them.
  if (!globalThis.isSecureContext) return ['secure-context'];
  const missing: MissingFeature[] = [];
  if (typeof VideoDecoder === 'undefined' || typeof VideoFrame === 'undefined') missing.push('webcodecs');
  if (!hasWebGl2()) missing.push('webgl2');
  return missing;
}
