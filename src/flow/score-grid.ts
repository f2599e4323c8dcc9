/** Scores on a grid of three axes, NaN where nothing could be scored. */
export class ScoreGrid {
  private readonly sizes: readonly [number, number, number];
  private readonly scores: Float32Array;

  constructor(depth: number, rows: number, columns: number) {
    this.sizes = [depth, rows, columns];
    this.scores = new Float32Array(depth * rows * columns).fill(Number.NaN);
  }

  set(d: number, r: number, c: number, score: number): void {
    this.scores[(d * this.sizes[1] + r) * this.sizes[2] + c] = score;
  }

  at(cell: number): number {
    return this.scores[cell] as number;
  }

  /**
   * The two highest cells that no cell around them (26 of them, fewer at the rim) exceeds, highest first; on a plateau the first cell counts.
   * Fewer than two entries when there are fewer peaks.
   */
  twoHighestPeaks(): readonly number[] {
    const peaks: number[] = [];
    for (let cell = 0; cell < this.scores.length; cell++) {
      if (Number.isNaN(this.at(cell)) || !this.isPeak(cell)) continue;
      peaks.push(cell);
    }
    return peaks.sort((a, b) => this.at(b) - this.at(a) || a - b).slice(0, 2);
  }

  /** The place of a peak between the cells, by a parabola through its neighbours along each axis; unchanged along an axis where it lies on the rim. */
  refined(cell: number): readonly [number, number, number] {
    const [depth, rows, columns] = this.sizes;
    const c = cell % columns;
    const r = Math.floor(cell / columns) % rows;
    const d = Math.floor(cell / (columns * rows));
    const along = (index: number, size: number, stride: number) =>
      index > 0 && index < size - 1 ? index + vertex(this.at(cell - stride), this.at(cell), this.at(cell + stride)) : index;
    return [along(d, depth, columns * rows), along(r, rows, columns), along(c, columns, 1)];
  }

  private isPeak(cell: number): boolean {
    const [depth, rows, columns] = this.sizes;
    const c = cell % columns;
    const r = Math.floor(cell / columns) % rows;
    const d = Math.floor(cell / (columns * rows));
    const score = this.at(cell);
    for (let i = Math.max(0, d - 1); i <= Math.min(depth - 1, d + 1); i++) {
      for (let j = Math.max(0, r - 1); j <= Math.min(rows - 1, r + 1); j++) {
        for (let k = Math.max(0, c - 1); k <= Math.min(columns - 1, c + 1); k++) {
          const other = (i * rows + j) * columns + k;
          if (this.at(other) > score || (other < cell && this.at(other) === score)) return false;
        }
      }
    }
    return true;
  }
}

/** Offset of a parabola's top from the middle of three equally spaced values, in [-0.5, 0.5]; 0 where the three do not bend down. */
function vertex(before: number, middle: number, after: number): number {
  const bend = before - 2 * middle + after;
  if (!(bend < 0)) return 0;
  return Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend)));
}
