/**
 * Small symmetric systems of linear equations, such as the normal equations of a least-squares fit.
 * `matrix` is n x n, row-major; only its lower triangle is read.
 */

/** A pivot smaller than this share of its diagonal entry means that one unknown cannot be told from the others. Chosen. */
const MIN_PIVOT_SHARE = 1e-7;

/**
 * Cholesky factor of `matrix`, written over its lower triangle.
 * @returns false when the matrix is not safely positive definite (or holds a NaN); the triangle is then spoilt
 */
export function factorise(matrix: Float64Array, n: number): boolean {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j] as number;
      for (let k = 0; k < j; k++) sum -= (matrix[i * n + k] as number) * (matrix[j * n + k] as number);
      if (i === j) {
        if (!(sum > MIN_PIVOT_SHARE * (matrix[i * n + i] as number) && sum > 0)) return false;
        matrix[i * n + i] = Math.sqrt(sum);
      } else {
        matrix[i * n + j] = sum / (matrix[j * n + j] as number);
      }
    }
  }
  return true;
}

/** Solves with a factor made by `factorise`; `vector` holds the right-hand side on the way in and the solution on the way out. */
export function solveFactored(factor: Float64Array, n: number, vector: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = vector[i] as number;
    for (let k = 0; k < i; k++) sum -= (factor[i * n + k] as number) * (vector[k] as number);
    vector[i] = sum / (factor[i * n + i] as number);
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = vector[i] as number;
    for (let k = i + 1; k < n; k++) sum -= (factor[k * n + i] as number) * (vector[k] as number);
    vector[i] = sum / (factor[i * n + i] as number);
  }
}
