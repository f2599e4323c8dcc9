import type { TemplateLevel } from './template-level.ts';

/** Unknowns of one alignment step: gain, bias, turn, shift x, shift y and, last, growth. Turn and growth in px at the template's radius. */
export const GAIN = 0;
export const TURN = 2;
export const SHIFT_X = 3;
export const SHIFT_Y = 4;
export const GROWTH = 5;
/** What `damp` adds, a share of the mean diagonal. Chosen. */
const DAMPING = 0.03;
/** Without and with growth. */
export const RIGID_UNKNOWNS = 5;
export const SIMILARITY_UNKNOWNS = 6;

/**
 * Normal equations of the weighted regression of `residual` on the template's value, 1 and its steepest-descent images.
 * @param matrix n x n, lower triangle filled; @param vector n entries; n is 5 or 6
 */
export function normalEquations(
  level: TemplateLevel,
  residual: Float32Array,
  weight: Float32Array,
  n: number,
  matrix: Float64Array,
  vector: Float64Array,
): void {
  const { count, value, steepest } = level;
  let w = 0;
  let wv = 0;
  let wvv = 0;
  let wt = 0;
  let wtv = 0;
  let wtt = 0;
  let wx = 0;
  let wxv = 0;
  let wxt = 0;
  let wxx = 0;
  let wy = 0;
  let wyv = 0;
  let wyt = 0;
  let wyx = 0;
  let wyy = 0;
  let rv = 0;
  let r1 = 0;
  let rt = 0;
  let rx = 0;
  let ry = 0;
  for (let k = 0; k < count; k++) {
    const g = weight[k] as number;
    if (g === 0) continue;
    const v = value[k] as number;
    const turn = steepest[4 * k] as number;
    const x = steepest[4 * k + 2] as number;
    const y = steepest[4 * k + 3] as number;
    const gv = g * v;
    const gt = g * turn;
    const gx = g * x;
    const gy = g * y;
    const r = residual[k] as number;
    w += g;
    wv += gv;
    wvv += gv * v;
    wt += gt;
    wtv += gt * v;
    wtt += gt * turn;
    wx += gx;
    wxv += gx * v;
    wxt += gx * turn;
    wxx += gx * x;
    wy += gy;
    wyv += gy * v;
    wyt += gy * turn;
    wyx += gy * x;
    wyy += gy * y;
    rv += gv * r;
    r1 += g * r;
    rt += gt * r;
    rx += gx * r;
    ry += gy * r;
  }
  const rows = [[wvv], [wv, w], [wtv, wt, wtt], [wxv, wx, wxt, wxx], [wyv, wy, wyt, wyx, wyy]];
  rows.forEach((row, i) => {
    row.forEach((entry, j) => {
      matrix[i * n + j] = entry;
    });
  });
  vector.set([rv, r1, rt, rx, ry]);
  if (n === SIMILARITY_UNKNOWNS) addGrowth(level, residual, weight, matrix, vector);
}

function addGrowth(
  level: TemplateLevel,
  residual: Float32Array,
  weight: Float32Array,
  matrix: Float64Array,
  vector: Float64Array,
): void {
  const { count, value, steepest } = level;
  const row = new Float64Array(SIMILARITY_UNKNOWNS);
  let right = 0;
  for (let k = 0; k < count; k++) {
    const grow = steepest[4 * k + 1] as number;
    const g = (weight[k] as number) * grow;
    if (g === 0) continue;
    row[0] = (row[0] as number) + g * (value[k] as number);
    row[1] = (row[1] as number) + g;
    row[TURN] = (row[TURN] as number) + g * (steepest[4 * k] as number);
    row[SHIFT_X] = (row[SHIFT_X] as number) + g * (steepest[4 * k + 2] as number);
    row[SHIFT_Y] = (row[SHIFT_Y] as number) + g * (steepest[4 * k + 3] as number);
    row[GROWTH] = (row[GROWTH] as number) + g * grow;
    right += g * (residual[k] as number);
  }
  matrix.set(row, GROWTH * SIMILARITY_UNKNOWNS);
  vector[GROWTH] = right;
}

/**
 * Shortens steps in directions that the texture hardly fixes (along a seam, say) and leaves the well-fixed ones alone (Levenberg 1944, Q Appl Math 2:164).
 * Steps only: where the search ends does not depend on it.
 */
export function damp(matrix: Float64Array, n: number): void {
  let sum = 0;
  for (let i = TURN; i < n; i++) sum += matrix[i * n + i] as number;
  const more = (DAMPING * sum) / (n - TURN);
  for (let i = TURN; i < n; i++) matrix[i * n + i] = (matrix[i * n + i] as number) + more;
}
