import { describe, expect, test } from 'vitest';
import { capsuleMask } from '../../src/flow/capsule-mask.ts';
import { changedTemplate } from '../../src/flow/changed-template.ts';
import { cropOf, type Grey } from '../../src/flow/grey.ts';
import { alignPatch } from '../../src/flow/patch-alignment.ts';
import { type PatchTemplate, prepareTemplate } from '../../src/flow/patch-template.ts';
import { buildPyramid, type Pyramid } from '../../src/flow/pyramid.ts';
import type { TemplateLevel } from '../../src/flow/template-level.ts';
import { gaussianFrom, motionOf, texture } from './synthetic-picture.ts';

const SIZE = 200;
const LEVELS = 3;
const ground = texture(5);
/** The joint about which the limb turns, and the way it points at rest. */
const JOINT = { x: 70, y: 40 };
const LENGTH = 110;
const HALF_WIDTH = 11;

/** Brightness across a plain, dark limb with one bright seam; and how far the other leg hangs behind it, px. */
const shade = (across: number): number => 50 + 90 * Math.exp(-(((across - 3) / 2) ** 2));
const OTHER_PX = -14;

/** How much of a pixel a limb covers, its end being `along` and `across` away. */
function cover(along: number, across: number): number {
  const beyond = along - Math.max(0, Math.min(LENGTH, along));
  return Math.max(0, Math.min(1, HALF_WIDTH - Math.hypot(beyond, across) + 0.5));
}

/** A leg hanging before a faintly textured wall, turned by so many degrees; the other leg, just like it, hangs still behind. */
function picture(turnDeg: number, { noise = 0, seed = 1, gain = 1 } = {}): Grey {
  const gaussian = gaussianFrom(seed);
  const angle = ((90 + turnDeg) * Math.PI) / 180;
  const data = new Uint8Array(SIZE * SIZE);
  for (let i = 0; i < data.length; i++) {
    const x = (i % SIZE) - JOINT.x;
    const y = Math.floor(i / SIZE) - JOINT.y;
    const along = Math.cos(angle) * x + Math.sin(angle) * y;
    const across = Math.cos(angle) * y - Math.sin(angle) * x;
    const behind = cover(y, OTHER_PX - x);
    const inside = cover(along, across);
    const still = behind * shade(OTHER_PX - x) + (1 - behind) * (130 + 0.2 * (ground(x, y) - 125));
    const value = inside * shade(across) + (1 - inside) * still;
    data[i] = Math.max(0, Math.min(255, Math.round(gain * value + noise * gaussian())));
  }
  return { width: SIZE, height: SIZE, data };
}

const OUTLINE = [{ a: { x: JOINT.x, y: JOINT.y + 12 }, b: { x: JOINT.x, y: JOINT.y + 96 }, radius: 26 }];

/** The leg at rest in an outline that is far too wide: half of it is wall and other leg. */
function atRest(): { readonly template: PatchTemplate; readonly then: Pyramid; readonly rect: Parameters<typeof cropOf>[1] } {
  const rect = { x: 20, y: 20, width: 100, height: 150 };
  const crop = cropOf(picture(0), rect);
  if (!crop) throw new Error('atRest requires a crop in the picture');
  const then = buildPyramid(crop, LEVELS);
  const made = prepareTemplate(then, capsuleMask(OUTLINE, crop));
  if (!made.ok) throw new Error(`atRest requires texture, got ${made.error.kind}`);
  return { template: made.value, then, rect };
}

const { template, then, rect } = atRest();
const seenNow = (frame: Grey): PatchTemplate => {
  const crop = cropOf(frame, rect);
  if (!crop) throw new Error('seenNow requires a crop in the picture');
  return changedTemplate(template, then, buildPyramid(crop, LEVELS));
};
const level0 = (t: PatchTemplate): TemplateLevel => t.levels[0] as TemplateLevel;
/** Mean share of its weight that each pixel keeps, over the pixels that `where` picks by their place from the joint. */
function kept(now: PatchTemplate, where: (x: number, y: number) => boolean): number {
  const was = level0(template);
  const shares: number[] = [];
  for (let k = 0; k < was.count; k++) {
    const x = template.centroidX + (was.x[k] as number) - JOINT.x;
    const y = template.centroidY + (was.y[k] as number) - JOINT.y;
    if (where(x, y)) shares.push((level0(now).weight[k] as number) / (was.weight[k] as number));
  }
  return shares.reduce((a, b) => a + b, 0) / shares.length;
}

describe('a template whose unchanged pixels weigh little', () => {
  test('keeps all its weights while the segment rests, also under noise', () => {
    expect(level0(seenNow(picture(0))).weight).toEqual(level0(template).weight);
    const noisy = seenNow(picture(0, { noise: 4 }));
    expect(kept(noisy, () => true)).toBeGreaterThan(0.9);
  });

  test('what stays beside the leg weighs little once the leg has left, what has changed weighs fully', () => {
    const now = seenNow(picture(-30, { noise: 2 }));
    // The leg swings to the right of its old place; low down it has left it wholly.
    expect(kept(now, (x, y) => x < -HALF_WIDTH - 2 && y > 50)).toBeLessThan(0.2);
    expect(kept(now, (x, y) => Math.abs(x) < HALF_WIDTH - 2 && y > 70)).toBeGreaterThan(0.6);
  });

  test('other light over the whole picture leaves the weights about alike', () => {
    const now = seenNow(picture(0, { gain: 1.5 }));
    const shares = [kept(now, (x) => x < -HALF_WIDTH), kept(now, (x) => x > HALF_WIDTH)];
    for (const share of shares) expect(share).toBeGreaterThan(0.5);
  });

  test('the match follows the leg, though the outline takes in half of the other one', () => {
    for (const turn of [-4, -8, -12, -16, -24]) {
      const frame = picture(turn, { noise: 3, seed: 3 });
      const start = motionOf(turn + 3, 0, 0, JOINT.x, JOINT.y);
      const found = alignPatch(seenNow(frame), buildPyramid(frame, LEVELS), start);
      if (!found.ok) throw new Error(`no match at ${turn}: ${found.error.kind}`);
      expect(Math.abs(found.value.motion.rotationDeg - turn)).toBeLessThan(0.3);
    }
  });
});
