import type { ChromaPatch } from './chroma.ts';
import type { Seed } from './sticker-at.ts';

/** Half widths of the boxes that are tried, cells. Chosen: with cells of 2 px, stickers 5 to 60 px across. */
const HALF_WIDTHS = [1, 2, 3, 5, 8, 13] as const;
/** A box whose colour is nearer than this to that of any of its four neighbours is none, in units of chroma. Chosen: half of what a sticker needs. */
const MIN_RESPONSE = 0.12;
/** How many seeds are looked into, the strongest first. Chosen: bounds the time in a room full of colours. */
const MOST_SEEDS = 80;

interface StrongSeed extends Seed {
  readonly response: number;
}

/**
 * Places where a box differs in colour from all four boxes beside it: dots, and not edges or stripes. Strongest first, none within another.
 */
export function seedsIn(patch: ChromaPatch): readonly StrongSeed[] {
  const redGreen = sums(patch.redGreen, patch.width, patch.height);
  const yellowBlue = sums(patch.yellowBlue, patch.width, patch.height);
  const all = HALF_WIDTHS.flatMap((half) => peaks(patch, redGreen, yellowBlue, half));
  all.sort((p, q) => q.response - p.response);
  const kept: StrongSeed[] = [];
  for (const seed of all) {
    if (kept.length >= MOST_SEEDS) break;
    if (kept.every((k) => Math.hypot(k.x - seed.x, k.y - seed.y) > Math.max(k.halfPx, seed.halfPx))) kept.push(seed);
  }
  return kept;
}

/** Sums over all cells above and to the left, one row and column of zeros first. Crow 1984, SIGGRAPH 207. */
function sums(values: Float32Array, width: number, height: number): Float64Array {
  const across = width + 1;
  const table = new Float64Array(across * (height + 1));
  for (let y = 0; y < height; y++) {
    let row = 0;
    for (let x = 0; x < width; x++) {
      row += values[y * width + x] as number;
      table[(y + 1) * across + x + 1] = (table[y * across + x + 1] as number) + row;
    }
  }
  return table;
}

/** Local maxima of the response of one box size. */
function peaks(patch: ChromaPatch, redGreen: Float64Array, yellowBlue: Float64Array, half: number): readonly StrongSeed[] {
  const { width, height, step } = patch;
  const stride = Math.max(1, half >> 1);
  const away = 2 * half + 2;
  const margin = half + 1;
  const columns = Math.floor((width - 1 - 2 * margin) / stride) + 1;
  const rows = Math.floor((height - 1 - 2 * margin) / stride) + 1;
  if (columns < 1 || rows < 1) return [];
  const across = width + 1;
  const side = 2 * half + 1;
  const area = side * side;
  const mean = (table: Float64Array, x: number, y: number): number => {
    const a = (y - half) * across + x - half;
    const b = a + side * across;
    return ((table[b + side] as number) - (table[b] as number) - (table[a + side] as number) + (table[a] as number)) / area;
  };
  const response = new Float32Array(columns * rows);
  for (let j = 0; j < rows; j++) {
    const y = margin + j * stride;
    const up = Math.max(half, y - away);
    const low = Math.min(height - 1 - half, y + away);
    for (let i = 0; i < columns; i++) {
      const x = margin + i * stride;
      const p = mean(redGreen, x, y);
      const q = mean(yellowBlue, x, y);
      const differs = (bx: number, by: number): number => (mean(redGreen, bx, by) - p) ** 2 + (mean(yellowBlue, bx, by) - q) ** 2;
      let least = differs(Math.max(half, x - away), y);
      if (least > MIN_SQUARE) least = Math.min(least, differs(Math.min(width - 1 - half, x + away), y));
      if (least > MIN_SQUARE) least = Math.min(least, differs(x, up));
      if (least > MIN_SQUARE) least = Math.min(least, differs(x, low));
      if (least > MIN_SQUARE) response[j * columns + i] = Math.sqrt(least);
    }
  }
  const found: StrongSeed[] = [];
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const here = response[j * columns + i] as number;
      if (here === 0 || !isPeak(response, columns, rows, i, j)) continue;
      const x = patch.originX + step * (margin + i * stride);
      const y = patch.originY + step * (margin + j * stride);
      found.push({ x, y, halfPx: step * (half + 0.5), response: here });
    }
  }
  return found;
}

const MIN_SQUARE = MIN_RESPONSE ** 2;

function isPeak(response: Float32Array, columns: number, rows: number, i: number, j: number): boolean {
  const here = response[j * columns + i] as number;
  for (let y = Math.max(0, j - 1); y <= Math.min(rows - 1, j + 1); y++) {
    for (let x = Math.max(0, i - 1); x <= Math.min(columns - 1, i + 1); x++) {
      const there = response[y * columns + x] as number;
      // Of equal neighbours the first is the peak.
      if (there > here || (there === here && y * columns + x < j * columns + i)) return false;
    }
  }
  return true;
}
