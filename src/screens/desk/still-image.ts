/** A picture that stands still: drawn from, never drawn on. A new picture is a new object. */
export type StillImage = HTMLCanvasElement | ImageBitmap;
