import type { Measured } from '../../src/signal/zero-lag.ts';

/** Variance of the first velocity, as the smoother takes it: unknown. */
const FIRST_VELOCITY_VARIANCE = 1e4;

/**
 * The most likely positions of a point whose velocity is driven by white acceleration, from all its measurements at once: weighted least squares
 * over positions and velocities, solved as one dense linear system. Independent of any filter.
 * @param rows first and last with a value
 */
export function mostLikelyPath(rows: readonly Measured[], acceleration: number): readonly number[] {
  const size = 2 * rows.length;
  const matrix = Array.from({ length: size }, () => new Float64Array(size + 1));
  const add = (row: number, column: number, by: number) => {
    const line = matrix[row] as Float64Array;
    line[column] = (line[column] as number) + by;
  };
  /** Adds weight * (sum of parts - target)^2 for one or two coupled residuals. */
  const couple = (a: Residual, b: Residual, weight: number) => {
    for (const [i, ai] of a.parts) {
      for (const [j, bj] of b.parts) add(i, j, weight * ai * bj);
      add(i, size, weight * ai * b.target);
    }
  };
  add(1, 1, 1 / FIRST_VELOCITY_VARIANCE);
  rows.forEach(({ value, variance }, i) => {
    if (value === null) return;
    const seen: Residual = { parts: [[2 * i, 1]], target: value };
    couple(seen, seen, 1 / variance);
  });
  for (let i = 1; i < rows.length; i++) {
    const dt = ((rows[i]?.tMs ?? 0) - (rows[i - 1]?.tMs ?? 0)) / 1000;
    const position: Residual = {
      parts: [
        [2 * i, 1],
        [2 * i - 2, -1],
        [2 * i - 1, -dt],
      ],
      target: 0,
    };
    const velocity: Residual = {
      parts: [
        [2 * i + 1, 1],
        [2 * i - 1, -1],
      ],
      target: 0,
    };
    // Inverse of q [[dt^3/3, dt^2/2], [dt^2/2, dt]].
    const q = acceleration;
    couple(position, position, 12 / (q * dt ** 3));
    couple(position, velocity, -6 / (q * dt ** 2));
    couple(velocity, position, -6 / (q * dt ** 2));
    couple(velocity, velocity, 4 / (q * dt));
  }
  const solved = solve(matrix);
  return rows.map((_, i) => solved[2 * i] as number);
}

interface Residual {
  readonly parts: readonly (readonly [index: number, factor: number])[];
  readonly target: number;
}

/** Gaussian elimination with pivoting; the last column is the right-hand side. */
function solve(matrix: readonly Float64Array[]): readonly number[] {
  const rows = [...matrix];
  const size = rows.length;
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let i = k + 1; i < size; i++) if (Math.abs(rows[i]?.[k] ?? 0) > Math.abs(rows[pivot]?.[k] ?? 0)) pivot = i;
    [rows[k], rows[pivot]] = [rows[pivot] as Float64Array, rows[k] as Float64Array];
    const top = rows[k] as Float64Array;
    for (let i = k + 1; i < size; i++) {
      const row = rows[i] as Float64Array;
      const factor = (row[k] as number) / (top[k] as number);
      for (let j = k; j <= size; j++) row[j] = (row[j] as number) - factor * (top[j] as number);
    }
  }
  const x = new Array<number>(size).fill(0);
  for (let k = size - 1; k >= 0; k--) {
    const row = rows[k] as Float64Array;
    let rest = row[size] as number;
    for (let j = k + 1; j < size; j++) rest -= (row[j] as number) * (x[j] as number);
    x[k] = rest / (row[k] as number);
  }
  return x;
}
