import type { FloatImage } from './grey.ts';

/**
 * A square window laid over a picture at a sub-pixel place. All its pixels share the fraction, so the four bilinear weights are worked out once;
 * rows and columns beyond the picture repeat its edge.
 */
export class PictureWindow {
  readonly size: number;
  private readonly columns: Int32Array;
  private readonly rows: Int32Array;
  private whole = false;
  private fx = 0;
  private fy = 0;

  constructor(size: number) {
    this.size = size;
    this.columns = new Int32Array(size + 1);
    this.rows = new Int32Array(size + 1);
  }

  /** Centres the window at (x, y), px of a picture of the given size. */
  place(x: number, y: number, width: number, height: number): void {
    const half = (this.size - 1) / 2;
    const left = Math.floor(x) - half;
    const top = Math.floor(y) - half;
    this.fx = x - Math.floor(x);
    this.fy = y - Math.floor(y);
    this.whole = left >= 0 && left + this.size < width;
    for (let k = 0; k <= this.size; k++) {
      this.columns[k] = Math.min(Math.max(left + k, 0), width - 1);
      this.rows[k] = Math.min(Math.max(top + k, 0), height - 1) * width;
    }
  }

  /** Copies what the window covers into `out`, row by row. `data` has the layout of the picture it was placed on. */
  read(data: FloatImage['data'], out: Float32Array): void {
    const { size, columns, rows, whole, fx, fy } = this;
    const w00 = (1 - fx) * (1 - fy);
    const w10 = fx * (1 - fy);
    const w01 = (1 - fx) * fy;
    const w11 = fx * fy;
    let k = 0;
    for (let j = 0; j < size; j++) {
      const upper = rows[j] as number;
      const lower = rows[j + 1] as number;
      const left = columns[0] as number;
      let a = data[upper + left] as number;
      let b = data[lower + left] as number;
      for (let i = 1; i <= size; i++) {
        const column = whole ? left + i : (columns[i] as number);
        const c = data[upper + column] as number;
        const d = data[lower + column] as number;
        out[k++] = a * w00 + c * w10 + b * w01 + d * w11;
        a = c;
        b = d;
      }
    }
  }
}
