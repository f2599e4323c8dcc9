import { bench, describe } from 'vitest';
import { findCorners } from '../../src/flow/corners.ts';
import { trackBothWays, trackPoints } from '../../src/flow/lucas-kanade.ts';
import { alignPatch } from '../../src/flow/patch-alignment.ts';
import { prepareTemplate } from '../../src/flow/patch-template.ts';
import { still } from '../../src/flow/plane-motion.ts';
import { buildPyramid, type Pyramid } from '../../src/flow/pyramid.ts';
import { fitRobustSimilarity } from '../../src/flow/robust-similarity.ts';
import { px } from '../../src/units.ts';
import { motionOf, render, texture } from '../flow/synthetic-picture.ts';

// Budget: the flow step of a frame (one crop's pyramid, three patches, 60 points both ways) within 6 ms on a slow 2-core machine.
const SIZE = 260;
const surface = texture(3);
const restPicture = render(surface, SIZE, SIZE, { noise: 2 });
const picture = render(surface, SIZE, SIZE, { motion: motionOf(4, 2.3, -1.7, 130, 130), noise: 2, noiseSeed: 2 });
const rest = buildPyramid(restPicture, 3);
const seen = buildPyramid(picture, 3);
/** Every slope picture worked out, as it is for a rest picture kept over frames. */
const warm = (pyramid: Pyramid): Pyramid => {
  for (const level of pyramid.levels) level.gradients();
  return pyramid;
};
warm(rest);
warm(seen);

const rectangle = (width: number, height: number): Float32Array =>
  Float32Array.from(restPicture.data, (_, i) =>
    Math.abs((i % SIZE) - 130) <= width / 2 && Math.abs(Math.floor(i / SIZE) - 130) <= height / 2 ? 1 : 0,
  );
const mask = rectangle(90, 50);
const prepared = prepareTemplate(rest, mask);
if (!prepared.ok) throw new Error(`the bench requires a template, got ${prepared.error.kind}`);
const template = prepared.value;
const start = motionOf(2.5, 1, -1, template.centroidX, template.centroidY);
const corners = findCorners(rest, { mask: Uint8Array.from(rectangle(220, 220)) }).points;
const tracked = trackBothWays(rest, seen, corners);

describe('pictures, 260 x 260', () => {
  bench('pyramid of 3 levels', () => {
    buildPyramid(picture, 3);
  });
  bench('pyramid of 3 levels with all slopes', () => {
    warm(buildPyramid(picture, 3));
  });
  bench('60 corners', () => {
    findCorners(rest);
  });
});

describe('60 points, window 15, 3 levels', () => {
  bench('forward', () => {
    trackPoints(rest, seen, corners);
  });
  bench('forward and back', () => {
    trackBothWays(rest, seen, corners);
  });
  bench('robust similarity, 100 draws', () => {
    fitRobustSimilarity(corners, tracked.positions, { seed: 1, inlierPx: px(1) });
  });
});

describe('a foot of 90 x 50', () => {
  bench('preparing the template', () => {
    prepareTemplate(rest, mask);
  });
  bench('alignment from 1.5 degrees and 1.5 px off', () => {
    alignPatch(template, seen, start);
  });
  bench('alignment from 4 degrees and 3 px off', () => {
    alignPatch(template, seen, still(template.centroidX, template.centroidY));
  });
  bench('alignment on the half-size picture only', () => {
    alignPatch(template, seen, start, { finestLevel: 1 });
  });
});
