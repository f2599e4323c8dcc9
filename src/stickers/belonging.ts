import type { Chroma, ChromaPatch } from './chroma.ts';

/** A sticker's colour and what it is told apart from: the colour beside it. */
export interface ColourPair {
  readonly sticker: Chroma;
  readonly surround: Chroma;
}

/** A pixel is of the sticker's core when it is this near to its colour, as a share of the way to the surround... Chosen. */
const CORE_SHARE = 0.45;
/** ...but not farther than this, in units of chroma: between a vivid sticker and skin lie the colours of other things. Chosen. */
const CORE_MOST = 0.4;
/** How much belongs rises from 0 to 1 between these shares of the way from surround to sticker: less is noise of the ground, more is shading. Chosen. */
const RAMP_FROM = 0.2;
const RAMP_TO = 0.8;

export const chromaContrast = ({ sticker, surround }: ColourPair): number =>
  Math.hypot(sticker.redGreen - surround.redGreen, sticker.yellowBlue - surround.yellowBlue);

/** Marks with 1 the cells that have the sticker's colour. */
export function coreOf(patch: ChromaPatch, pair: ColourPair): Uint8Array {
  const { redGreen, yellowBlue } = pair.sticker;
  const reach = Math.min(CORE_MOST, CORE_SHARE * chromaContrast(pair));
  const most = reach * reach;
  const core = new Uint8Array(patch.width * patch.height);
  for (let i = 0; i < core.length; i++) {
    const p = (patch.redGreen[i] as number) - redGreen;
    const q = (patch.yellowBlue[i] as number) - yellowBlue;
    if (p * p + q * q <= most) core[i] = 1;
  }
  return core;
}

/** How much a cell belongs to the sticker: 0 the surround, 1 the sticker, in between an edge that shows both. */
export function belonging(patch: ChromaPatch, at: number, { sticker, surround }: ColourPair): number {
  const dp = sticker.redGreen - surround.redGreen;
  const dq = sticker.yellowBlue - surround.yellowBlue;
  const p = (patch.redGreen[at] as number) - surround.redGreen;
  const q = (patch.yellowBlue[at] as number) - surround.yellowBlue;
  const share = (p * dp + q * dq) / (dp * dp + dq * dq);
  return Math.min(1, Math.max(0, (share - RAMP_FROM) / (RAMP_TO - RAMP_FROM)));
}
