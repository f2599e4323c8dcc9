import { belonging, type ColourPair, coreOf } from './belonging.ts';
import type { Chroma, ChromaPatch } from './chroma.ts';
import type { Spot } from './rgba-picture.ts';

/** A patch of one colour. */
export interface Blob {
  /** Mean of its pixels, each weighing what belongs of it, px of the frame: to a fraction of a pixel. */
  readonly at: Spot;
  /** Of the circle with the same area, px. */
  readonly diameterPx: number;
  /** 1 for a circle, less for what is long: the smaller of its two spreads over the larger. */
  readonly roundness: number;
  /** Its mean colour, away from the edge where there is enough of it. */
  readonly colour: Chroma;
  /** Share of it that is burnt to white. */
  readonly glare: number;
  /** It reaches the edge of the patch, so that more of it may lie outside. */
  readonly cut: boolean;
}

/** How far beyond the core an edge still belongs, cells: blur of lens and video. Chosen; video keeps colour for two by two pixels. */
const EDGE_CELLS = 3;
/** A cell this bright in all three channels is burnt, grey levels. Chosen. */
export const BURNT_LEVEL = 235;
/** Fewest core cells of a blob. Chosen. */
const MIN_CORE_CELLS = 4;

/**
 * All blobs of a colour in a patch: joined core cells, holes in them filled (a highlight), and the edge cells around, each going to the nearest core.
 */
export function blobsIn(patch: ChromaPatch, pair: ColourPair): readonly Blob[] {
  const { width, height } = patch;
  const core = coreOf(patch, pair);
  const label = new Int32Array(width * height);
  const queue = new Int32Array(width * height);
  const found: Blob[] = [];
  let next = 1;
  const members: Int32Array[] = [];
  for (let start = 0; start < core.length; start++) {
    if (core[start] === 0 || label[start] !== 0) continue;
    const count = flood(core, label, queue, start, next, width, height);
    members.push(queue.slice(0, count));
    next++;
  }
  members.forEach((cells, i) => {
    if (cells.length >= MIN_CORE_CELLS) found.push(measured(patch, pair, cells, label, i + 1));
  });
  return found;
}

/** Labels the core cells joined with `start`, eight neighbours; their indices end up in `queue`. @returns how many */
function flood(
  core: Uint8Array,
  label: Int32Array,
  queue: Int32Array,
  start: number,
  name: number,
  width: number,
  height: number,
): number {
  let count = 1;
  queue[0] = start;
  label[start] = name;
  for (let head = 0; head < count; head++) {
    const at = queue[head] as number;
    const x = at % width;
    const y = (at - x) / width;
    for (let j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
      for (let i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1); i++) {
        const to = j * width + i;
        if (core[to] === 0 || label[to] !== 0) continue;
        label[to] = name;
        queue[count++] = to;
      }
    }
  }
  return count;
}

/** Cells of a box around a blob: 0 outside, 1 edge, 2 core or hole. */
const OUTSIDE = 0;
const EDGE = 1;
const INSIDE = 2;

function measured(patch: ChromaPatch, pair: ColourPair, cells: Int32Array, label: Int32Array, name: number): Blob {
  const { width, height, step } = patch;
  let x0 = width;
  let y0 = height;
  let x1 = 0;
  let y1 = 0;
  for (const at of cells) {
    const x = at % width;
    const y = (at - x) / width;
    x0 = Math.min(x0, x);
    x1 = Math.max(x1, x);
    y0 = Math.min(y0, y);
    y1 = Math.max(y1, y);
  }
  const cut = x0 === 0 || y0 === 0 || x1 === width - 1 || y1 === height - 1;
  const left = Math.max(0, x0 - EDGE_CELLS);
  const top = Math.max(0, y0 - EDGE_CELLS);
  const across = Math.min(width - 1, x1 + EDGE_CELLS) - left + 1;
  const down = Math.min(height - 1, y1 + EDGE_CELLS) - top + 1;
  const kind = new Uint8Array(across * down);
  for (const at of cells) kind[Math.floor(at / width - top) * across + (at % width) - left] = INSIDE;
  fillHoles(kind, across, down);
  const own = kind.slice();
  for (let k = 0; k < own.length; k++) if (own[k] === INSIDE && onRim(own, k, across)) markEdge(kind, k, across, down);

  let total = 0;
  let sx = 0;
  let sy = 0;
  let sxx = 0;
  let sxy = 0;
  let syy = 0;
  let inside = 0;
  let burnt = 0;
  let pure = 0;
  const mean = { redGreen: 0, yellowBlue: 0 };
  for (let k = 0; k < kind.length; k++) {
    if (kind[k] === OUTSIDE) continue;
    const x = (k % across) + left;
    const y = Math.floor(k / across) + top;
    const at = y * width + x;
    const other = label[at] as number;
    if (other !== 0 && other !== name) continue;
    const isCore = other === name;
    const weight = kind[k] === INSIDE && !isCore ? 1 : belonging(patch, at, pair);
    total += weight;
    sx += weight * x;
    sy += weight * y;
    sxx += weight * x * x;
    sxy += weight * x * y;
    syy += weight * y * y;
    if (kind[k] === INSIDE) {
      inside++;
      if ((patch.least[at] as number) >= BURNT_LEVEL) burnt++;
    }
    if (isCore) {
      pure++;
      mean.redGreen += patch.redGreen[at] as number;
      mean.yellowBlue += patch.yellowBlue[at] as number;
    }
  }
  // A core far from full belonging everywhere weighs nothing; it then counts as its plain cells.
  if (!(total > 0)) return emptyBlob(patch, cells, pair.sticker, cut);
  const cx = sx / total;
  const cy = sy / total;
  return {
    at: { x: patch.originX + step * cx, y: patch.originY + step * cy },
    diameterPx: step * Math.sqrt((4 * total) / Math.PI),
    roundness: roundness(sxx / total - cx * cx, sxy / total - cx * cy, syy / total - cy * cy),
    colour: { redGreen: mean.redGreen / pure, yellowBlue: mean.yellowBlue / pure },
    glare: burnt / inside,
    cut,
  };
}

function emptyBlob(patch: ChromaPatch, cells: Int32Array, colour: Chroma, cut: boolean): Blob {
  const at = cells[0] as number;
  const x = patch.originX + patch.step * (at % patch.width);
  const y = patch.originY + patch.step * Math.floor(at / patch.width);
  return { at: { x, y }, diameterPx: 0, roundness: 0, colour, glare: 0, cut };
}

/** Spread along the shorter axis over spread along the longer one; a cell's own size is added, so that a line of cells is not 0 wide. */
function roundness(xx: number, xy: number, yy: number): number {
  const middle = (xx + yy) / 2;
  const off = Math.hypot((xx - yy) / 2, xy);
  return Math.sqrt((Math.max(0, middle - off) + 1 / 12) / (middle + off + 1 / 12));
}

/** Turns to INSIDE whatever cannot be reached from the box's rim. */
function fillHoles(kind: Uint8Array, across: number, down: number): void {
  const reached = new Uint8Array(kind.length);
  const stack: number[] = [];
  const visit = (x: number, y: number): void => {
    if (x < 0 || y < 0 || x >= across || y >= down) return;
    const k = y * across + x;
    if (reached[k] === 1 || kind[k] === INSIDE) return;
    reached[k] = 1;
    stack.push(k);
  };
  for (let x = 0; x < across; x++) {
    visit(x, 0);
    visit(x, down - 1);
  }
  for (let y = 0; y < down; y++) {
    visit(0, y);
    visit(across - 1, y);
  }
  for (let k = stack.pop(); k !== undefined; k = stack.pop()) {
    const x = k % across;
    const y = (k - x) / across;
    visit(x - 1, y);
    visit(x + 1, y);
    visit(x, y - 1);
    visit(x, y + 1);
  }
  for (let k = 0; k < kind.length; k++) if (reached[k] === 0) kind[k] = INSIDE;
}

/** Whether a cell inside has a neighbour, or the box's own rim, that is not. */
const onRim = (kind: Uint8Array, k: number, across: number): boolean =>
  kind[k - 1] !== INSIDE || kind[k + 1] !== INSIDE || kind[k - across] !== INSIDE || kind[k + across] !== INSIDE;

/** Marks as EDGE what lies within EDGE_CELLS of cell k and is not inside. */
function markEdge(kind: Uint8Array, k: number, across: number, down: number): void {
  const x = k % across;
  const y = (k - x) / across;
  for (let j = Math.max(0, y - EDGE_CELLS); j <= Math.min(down - 1, y + EDGE_CELLS); j++) {
    for (let i = Math.max(0, x - EDGE_CELLS); i <= Math.min(across - 1, x + EDGE_CELLS); i++) {
      if (kind[j * across + i] === OUTSIDE && (i - x) ** 2 + (j - y) ** 2 <= EDGE_CELLS ** 2) kind[j * across + i] = EDGE;
    }
  }
}
