import { PictureWindow } from './picture-window.ts';
import type { Pyramid, PyramidLevel } from './pyramid.ts';

/** Where the search for one point ended, in the two pictures' own pixels; `state` says how. */
export interface PointSearch {
  x: number;
  y: number;
  residual: number;
  state: 'tracked' | 'flat' | 'outside';
}

export interface PointSearchSettings {
  readonly windowPx: number;
  readonly levels: number;
  readonly iterations: number;
  readonly epsilonPx: number;
  readonly minEigenvalue: number;
  readonly matchLight: boolean;
}

/** Two steps that cancel to within this, px, mean the search swings between two places: settle half way. Bouguet's implementation in OpenCV. */
const SWING_PX = 0.01;

/** Below this a variance is rounding only, (grey levels)^2. Chosen. */
const UNIFORM_VARIANCE = 1e-3;
/** A window is stretched at most this much, so that noise on a blank does not become texture. Chosen. */
const MOST_GAIN = 4;

/** Follows single points; holds the windows it works in, so that following many points allocates nothing. */
export class PointFollower {
  private readonly settings: PointSearchSettings;
  private readonly window: PictureWindow;
  private readonly first: Float32Array;
  private readonly gx: Float32Array;
  private readonly gy: Float32Array;
  private readonly second: Float32Array;

  constructor(settings: PointSearchSettings) {
    this.settings = settings;
    this.window = new PictureWindow(settings.windowPx);
    const pixels = settings.windowPx ** 2;
    this.first = new Float32Array(pixels);
    this.gx = new Float32Array(pixels);
    this.gy = new Float32Array(pixels);
    this.second = new Float32Array(pixels);
  }

  /**
   * Coarse to fine search for the point (x, y) of `from` in `to`; `found` holds the guess on the way in and the answer on the way out.
   * A level on which the window is flat or outside is skipped; only the finest level decides the state.
   */
  follow(from: Pyramid, to: Pyramid, x: number, y: number, found: PointSearch): void {
    const levels = Math.min(this.settings.levels, from.levels.length, to.levels.length);
    for (let n = levels - 1; n >= 0; n--) {
      const shrink = 1 / 2 ** n;
      found.x *= shrink;
      found.y *= shrink;
      this.searchLevel(from.levels[n] as PyramidLevel, to.levels[n] as PyramidLevel, x * shrink, y * shrink, found);
      found.x /= shrink;
      found.y /= shrink;
    }
  }

  private searchLevel(from: PyramidLevel, to: PyramidLevel, x: number, y: number, found: PointSearch): void {
    const { iterations, epsilonPx, minEigenvalue, matchLight } = this.settings;
    const { window, first, second, gx, gy } = this;
    const { width, height } = to.image;
    found.residual = 0;
    if (!inside(x, y, from.image.width, from.image.height)) {
      found.state = 'outside';
      return;
    }
    window.place(x, y, from.image.width, from.image.height);
    window.read(from.image.data, first);
    const slopes = from.gradients();
    window.read(slopes.x, gx);
    window.read(slopes.y, gy);
    const pixels = first.length;
    let xx = 0;
    let xy = 0;
    let yy = 0;
    let sx = 0;
    let sy = 0;
    let sum = 0;
    let squares = 0;
    let firstX = 0;
    let firstY = 0;
    for (let k = 0; k < pixels; k++) {
      const a = gx[k] as number;
      const b = gy[k] as number;
      const v = first[k] as number;
      firstX += v * a;
      firstY += v * b;
      xx += a * a;
      xy += a * b;
      yy += b * b;
      sx += a;
      sy += b;
      sum += v;
      squares += v * v;
    }
    if (matchLight) {
      // A free brightness takes the mean slope out of the equations.
      xx -= (sx * sx) / pixels;
      xy -= (sx * sy) / pixels;
      yy -= (sy * sy) / pixels;
    }
    const mean = sum / pixels;
    const variance = squares / pixels - mean * mean;
    const smaller = (xx + yy - Math.sqrt((xx - yy) * (xx - yy) + 4 * xy * xy)) / (2 * pixels);
    const determinant = xx * yy - xy * xy;
    if (!(smaller >= minEigenvalue && determinant > 0)) {
      found.state = 'flat';
      return;
    }
    let lastX = 0;
    let lastY = 0;
    for (let step = 0; step < iterations; step++) {
      if (!inside(found.x, found.y, width, height)) {
        found.state = 'outside';
        return;
      }
      window.place(found.x, found.y, width, height);
      window.read(to.image.data, second);
      // Products of the slopes with the difference of the windows, the second one brought to the first one's light: one pass over the second.
      let secondSum = 0;
      let secondSquares = 0;
      let secondX = 0;
      let secondY = 0;
      for (let k = 0; k < pixels; k++) {
        const v = second[k] as number;
        secondSum += v;
        secondSquares += v * v;
        secondX += v * (gx[k] as number);
        secondY += v * (gy[k] as number);
      }
      const gain = matchLight ? gainBetween(variance, secondSquares / pixels - (secondSum / pixels) ** 2) : 1;
      const bias = matchLight ? mean - (gain * secondSum) / pixels : 0;
      const bx = firstX - gain * secondX - bias * sx;
      const by = firstY - gain * secondY - bias * sy;
      const dx = (yy * bx - xy * by) / determinant;
      const dy = (xx * by - xy * bx) / determinant;
      found.x += dx;
      found.y += dy;
      if (dx * dx + dy * dy <= epsilonPx * epsilonPx) break;
      if (step > 0 && Math.abs(dx + lastX) < SWING_PX && Math.abs(dy + lastY) < SWING_PX) {
        found.x -= dx / 2;
        found.y -= dy / 2;
        break;
      }
      lastX = dx;
      lastY = dy;
    }
    if (!inside(found.x, found.y, width, height)) {
      found.state = 'outside';
      return;
    }
    window.place(found.x, found.y, width, height);
    window.read(to.image.data, second);
    if (matchLight) matchMoments(second, mean, variance);
    let difference = 0;
    for (let k = 0; k < pixels; k++) difference += Math.abs((first[k] as number) - (second[k] as number));
    found.residual = difference / pixels;
    found.state = 'tracked';
  }
}

/** Half a pixel of grace: a coarse level's last pixel stands for the finer pixel beside it. False for NaN. */
const inside = (x: number, y: number, width: number, height: number): boolean =>
  x >= -0.5 && y >= -0.5 && x <= width - 0.5 && y <= height - 0.5;

/** Gain that brings a window to another's contrast; 0 for a uniform window, which has no contrast to stretch. */
const gainBetween = (wanted: number, variance: number): number =>
  variance > UNIFORM_VARIANCE ? Math.min(MOST_GAIN, Math.sqrt(wanted / variance)) : 0;

/** Shifts and stretches grey values to a mean and variance. */
function matchMoments(values: Float32Array, mean: number, variance: number): void {
  let sum = 0;
  let squares = 0;
  for (let k = 0; k < values.length; k++) {
    const v = values[k] as number;
    sum += v;
    squares += v * v;
  }
  const here = sum / values.length;
  const gain = gainBetween(variance, squares / values.length - here * here);
  for (let k = 0; k < values.length; k++) values[k] = mean + gain * ((values[k] as number) - here);
}
