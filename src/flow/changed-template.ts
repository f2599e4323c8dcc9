import type { PatchTemplate } from './patch-template.ts';
import type { Pyramid, PyramidLevel } from './pyramid.ts';
import type { TemplateLevel } from './template-level.ts';

/** What a pixel that has not changed still weighs when the segment has left its place. Chosen: 0.05. */
const UNCHANGED_WEIGHT = 0.05;
/** A change counts half at this share of the template's contrast, at this many times the change that a quarter of the pixels stay under (noise), and no less than this, grey levels. Chosen. */
const HALF_CONTRAST = 0.25;
const HALF_QUARTILES = 8;
const HALF_LEAST = 3;
/** The change that nine in ten pixels stay under says how far the segment has left its place: not at all up to the first, wholly from the second on. Chosen. */
const MOST = 0.9;
const STILL = 0.35;
const LEFT = 0.65;

/**
 * A template for a picture in which the segment may have moved away: pixels that still look the same at their old place weigh little.
 * They are ground beside the segment, or the other leg behind it, taken in by the outline; they would hold the match back where it was. Inside a plain
 * limb they may be the limb itself, and then say nothing of its motion. While nothing has changed every pixel keeps its weight.
 * Needs a camera that holds still; where the whole picture has changed all weights stay alike, and nothing is lost.
 * @param then the template's own picture; @param now the same rectangle of the present frame, same size and levels
 */
export function changedTemplate(template: PatchTemplate, then: Pyramid, now: Pyramid): PatchTemplate {
  return { ...template, levels: template.levels.map((level) => changedLevel(level, template, then, now)) };
}

function changedLevel(level: TemplateLevel, template: PatchTemplate, then: Pyramid, now: Pyramid): TemplateLevel {
  const change = changesOf(level, template, then, now);
  const shrink = 1 / 2 ** level.level;
  const noise = HALF_QUARTILES * quantile(change, 0.25);
  const half = Math.max(HALF_LEAST * shrink, HALF_CONTRAST * level.contrast, noise) ** 2;
  for (let k = 0; k < change.length; k++) {
    const squared = (change[k] as number) ** 2;
    change[k] = squared / (squared + half);
  }
  const most = quantile(change, MOST);
  const left = Math.max(0, Math.min(1, (most - STILL) / (LEFT - STILL)));
  if (left === 0) return level;
  const weight = new Float32Array(level.count);
  let totalWeight = 0;
  for (let k = 0; k < weight.length; k++) {
    const share = Math.min(1, (UNCHANGED_WEIGHT + (change[k] as number)) / (UNCHANGED_WEIGHT + most));
    const w = (level.weight[k] as number) * (1 - left + left * share);
    weight[k] = w;
    totalWeight += w;
  }
  return { ...level, weight, totalWeight };
}

/** How much each of the template's pixels has changed at its own place, grey levels. */
function changesOf({ level, count, x, y }: TemplateLevel, template: PatchTemplate, then: Pyramid, now: Pyramid): Float32Array {
  const { width, data: before } = (then.levels[level] as PyramidLevel).image;
  const { data: after } = (now.levels[level] as PyramidLevel).image;
  const centreX = (template.centroidX - then.originX) / 2 ** level;
  const centreY = (template.centroidY - then.originY) / 2 ** level;
  const change = new Float32Array(count);
  for (let k = 0; k < count; k++) {
    // Template pixels are pixels of that picture; only rounding lies between.
    const at = Math.round(centreY + (y[k] as number)) * width + Math.round(centreX + (x[k] as number));
    change[k] = Math.abs((before[at] as number) - (after[at] as number));
  }
  return change;
}

const quantile = (values: Float32Array, share: number): number =>
  values.slice().sort()[Math.floor(share * (values.length - 1))] as number;
