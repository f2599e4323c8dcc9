/** A canvas that is drawn on and read, and never shown. */
export type ScratchCanvas = OffscreenCanvas | HTMLCanvasElement;

/** @returns where a browser has no canvas of this kind, one of the page's: everything that draws runs on the page's thread there. */
export function scratchCanvas(width: number, height: number): ScratchCanvas {
  if (typeof OffscreenCanvas !== 'undefined') return new OffscreenCanvas(width, height);
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  return canvas;
}

/** @throws Error when the browser has no memory for it */
export function contextOf(
  canvas: ScratchCanvas,
  settings: CanvasRenderingContext2DSettings,
): OffscreenCanvasRenderingContext2D | CanvasRenderingContext2D {
  const context = canvas.getContext('2d', settings) as OffscreenCanvasRenderingContext2D | CanvasRenderingContext2D | null;
  if (!context) throw new Error('contextOf requires a 2d context, got none');
  return context;
}
