/**
 * Whether this browser has WebGL 2 where the pose model draws: on a canvas of no page, in a worker. Without it the model loads, and fails on its first picture.
 * Some browsers have it there and not on a page's own canvas.
 */
export function hasWebGl2(): boolean {
  if (typeof OffscreenCanvas === 'undefined') return false;
  const context = new OffscreenCanvas(1, 1).getContext('webgl2');
  // Only few may be held at a time; this one was only asked for.
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return context !== null;
}
