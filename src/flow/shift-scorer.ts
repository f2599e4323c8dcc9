import type { FloatImage } from './grey.ts';
import { UNIFORM_VARIANCE } from './patch-sampling.ts';
import type { TemplateLevel } from './template-level.ts';

/**
 * Scores one turned template at many whole-pixel shifts: the fractions are the same at every shift, so each template pixel's place and bilinear
 * weights are worked out once a turn.
 */
export class ShiftScorer {
  private readonly level: TemplateLevel;
  private readonly image: FloatImage;
  private readonly columns: Int32Array;
  private readonly rows: Int32Array;
  private readonly fx: Float32Array;
  private readonly fy: Float32Array;

  constructor(level: TemplateLevel, image: FloatImage) {
    this.level = level;
    this.image = image;
    this.columns = new Int32Array(level.count);
    this.rows = new Int32Array(level.count);
    this.fx = new Float32Array(level.count);
    this.fy = new Float32Array(level.count);
  }

  /** Puts the template's centroid at (centreX, centreY), px of the picture, turned by an angle whose cosine and sine, times the scale, are given. */
  pose(centreX: number, centreY: number, cos: number, sin: number): void {
    const { count, x, y } = this.level;
    for (let k = 0; k < count; k++) {
      const dx = x[k] as number;
      const dy = y[k] as number;
      const u = centreX + cos * dx - sin * dy;
      const v = centreY + sin * dx + cos * dy;
      const column = Math.floor(u);
      const row = Math.floor(v);
      this.columns[k] = column;
      this.rows[k] = row;
      this.fx[k] = u - column;
      this.fy[k] = v - row;
    }
  }

  /** Masked zero-mean normalised cross-correlation at a whole-pixel shift; NaN when less than `minInsideShare` of the mask is inside, 0 on a uniform picture. */
  zncc(shiftX: number, shiftY: number, minInsideShare: number): number {
    const { count, value, weight, totalWeight } = this.level;
    const { width, height, data } = this.image;
    const { columns, rows, fx, fy } = this;
    let w = 0;
    let wt = 0;
    let ws = 0;
    let wtt = 0;
    let wss = 0;
    let wts = 0;
    for (let k = 0; k < count; k++) {
      const column = (columns[k] as number) + shiftX;
      const row = (rows[k] as number) + shiftY;
      if (column < 0 || row < 0 || column >= width - 1 || row >= height - 1) continue;
      const at = row * width + column;
      const a = data[at] as number;
      const b = data[at + width] as number;
      const f = fx[k] as number;
      const upper = a + f * ((data[at + 1] as number) - a);
      const lower = b + f * ((data[at + width + 1] as number) - b);
      const s = upper + (fy[k] as number) * (lower - upper);
      const t = value[k] as number;
      const g = weight[k] as number;
      w += g;
      wt += g * t;
      ws += g * s;
      wtt += g * t * t;
      wss += g * s * s;
      wts += g * t * s;
    }
    if (!(w >= minInsideShare * totalWeight && w > 0)) return Number.NaN;
    const vt = wtt / w - (wt / w) ** 2;
    const vs = wss / w - (ws / w) ** 2;
    if (!(vt > UNIFORM_VARIANCE && vs > UNIFORM_VARIANCE)) return 0;
    return (wts / w - (wt / w) * (ws / w)) / Math.sqrt(vt * vs);
  }
}
