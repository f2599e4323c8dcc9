import type { PictureSize } from '../../capture/frame.ts';

/** Colours of what is drawn over a picture. */
export interface LegColours {
  readonly line: string;
  readonly edge: string;
  /** The target band, and its colour while it is reached. */
  readonly target: string;
  readonly reached: string;
}

/** The colours that the style sheets give a canvas. */
export function legColoursOf(canvas: HTMLCanvasElement): LegColours {
  const style = getComputedStyle(canvas);
  const colourOf = (name: string) => style.getPropertyValue(name).trim();
  return {
    line: colourOf('--leg'),
    edge: colourOf('--leg-edge'),
    target: colourOf('--leg-target'),
    reached: colourOf('--leg-reached'),
  };
}

/** A canvas as large as its picture, wiped. @throws without a 2d context */
export function wiped(canvas: HTMLCanvasElement, size: PictureSize): CanvasRenderingContext2D {
  if (canvas.width !== size.width || canvas.height !== size.height) {
    canvas.width = size.width;
    canvas.height = size.height;
  }
  const context = canvas.getContext('2d');
  if (!context) throw new Error('wiped requires a 2d context, got none');
  context.clearRect(0, 0, size.width, size.height);
  return context;
}

/**
 * Writes on a plate, wholly inside the picture.
 * @param leftOf where its left edge is to be, by its width, px
 * @param y its middle, px
 * @param height of the letters, px
 */
export function plate(
  context: CanvasRenderingContext2D,
  text: string,
  { leftOf, y, height }: { readonly leftOf: (width: number) => number; readonly y: number; readonly height: number },
  colours: LegColours,
): void {
  const { width: most, height: lowest } = context.canvas;
  context.font = `700 ${height}px ${getComputedStyle(context.canvas).fontFamily}`;
  context.textBaseline = 'middle';
  const pad = height * 0.35;
  const width = context.measureText(text).width + 2 * pad;
  const left = Math.min(Math.max(leftOf(width), 0), most - width);
  const middle = Math.min(Math.max(y, height * 0.75), lowest - height * 0.75);
  context.fillStyle = colours.edge;
  context.beginPath();
  context.roundRect(left, middle - height * 0.7, width, height * 1.4, height * 0.3);
  context.fill();
  context.fillStyle = colours.line;
  context.fillText(text, left + pad, middle + height * 0.06);
}
